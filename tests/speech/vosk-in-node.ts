/**
 * Runs vosk-browser in Node: its worker, built for browsers, inside a worker thread that has what it looks for.
 * The decoder is the browser's own WebAssembly, so its results are too.
 */
import { resolveObjectURL } from 'node:buffer';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Model } from 'vosk-browser';

const require = createRequire(import.meta.url);

/** Runs before the library's worker script: gives a thread the names of a browser's worker. */
const browserNames = `
const { parentPort, workerData } = require('node:worker_threads');
const { runInThisContext } = require('node:vm');
globalThis.require = require;
import(workerData.indexedDb).then(() => {
  const listeners = new Set();
  globalThis.self = globalThis;
  globalThis.location = { href: workerData.href };
  globalThis.postMessage = (message, transfer) => parentPort.postMessage(message, transfer);
  globalThis.addEventListener = (kind, listener) => { if (kind === 'message') listeners.add(listener); };
  globalThis.removeEventListener = (kind, listener) => { listeners.delete(listener); };
  globalThis.close = () => process.exit(0);
  globalThis.importScripts = () => {};
  globalThis.WorkerGlobalScope = function WorkerGlobalScope() {};
  // The library takes a thread with Node's names for Node itself, where it has no file system.
  delete globalThis.require;
  Object.defineProperty(globalThis, 'process', { value: undefined });
  runInThisContext(workerData.script);
  parentPort.on('message', (data) => {
    if (typeof globalThis.onmessage === 'function') globalThis.onmessage({ data });
    for (const listener of listeners) listener({ data });
  });
});
`;

/** The part of a browser's Worker that vosk-browser uses. */
class BrowserWorker {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  private readonly listeners = new Map<string, Set<(event: unknown) => void>>();
  private readonly waiting: unknown[] = [];
  private thread: Worker | undefined;

  constructor(url: string) {
    void this.start(url);
  }

  private async start(url: string): Promise<void> {
    const script = await resolveObjectURL(url)?.text();
    const thread = new Worker(browserNames, {
      eval: true,
      stdout: true, // not ours: the library prints each file that it unpacks
      workerData: {
        script,
        href: url,
        indexedDb: pathToFileURL(require.resolve('fake-indexeddb/auto')).href,
      },
    });
    const tell = (kind: string, event: unknown) => {
      for (const listener of this.listeners.get(kind) ?? []) listener(event);
    };
    thread.on('message', (data: unknown) => {
      this.onmessage?.({ data });
      tell('message', { data });
    });
    thread.on('error', (error: Error) => {
      this.onerror?.({ message: error.message });
      tell('error', { message: error.message });
    });
    this.thread = thread;
    for (const message of this.waiting.splice(0)) thread.postMessage(message);
  }

  postMessage(message: unknown): void {
    if (this.thread) this.thread.postMessage(message);
    else this.waiting.push(message);
  }

  addEventListener(kind: string, listener: (event: unknown) => void): void {
    const known = this.listeners.get(kind) ?? new Set();
    known.add(listener);
    this.listeners.set(kind, known);
  }

  removeEventListener(kind: string, listener: (event: unknown) => void): void {
    this.listeners.get(kind)?.delete(listener);
  }

  terminate(): void {
    void this.thread?.terminate();
  }
}

export interface LoadedModel {
  readonly model: Model;
  /** Ends the worker thread and the server of the archive. */
  close(): void;
}

/** Loads a model archive into a fresh worker thread. @throws when it is not ready within `timeoutMs`. */
export async function loadVoskModel(archive: Uint8Array, timeoutMs = 60_000): Promise<LoadedModel> {
  Object.assign(globalThis, { Worker: BrowserWorker });
  if (!('CustomEvent' in globalThis)) throw new Error('This needs Node 20 or newer.');
  const vosk = require('vosk-browser') as typeof import('vosk-browser');
  const server = createServer((_, response) => {
    response.setHeader('Access-Control-Allow-Origin', '*');
    response.end(archive);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('The archive could not be served.');
  const model = new vosk.Model(`http://127.0.0.1:${address.port}/model`, -1);
  const close = () => {
    (model as unknown as { worker: BrowserWorker }).worker.terminate();
    server.close();
  };
  await new Promise<void>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('The model did not load in time.')), timeoutMs);
    const settle = (then: () => void) => {
      clearTimeout(timer);
      then();
    };
    model.on('load', () => settle(resolve));
    model.on('error', (message) =>
      settle(() => reject(new Error(`The model did not load: ${JSON.stringify(message)}`))),
    );
  });
  return { model, close };
}
