import { isVoicePack, PAGE, SHELL_CACHES, type Shell, TAKE_OVER, VOICE_CACHE } from './shell.ts';

/**
 * Lets the app start with no network. The shell of one build is kept whole or not at all, and answered from the tablet
 * alone, so that pages and code of two builds never mix. A new build waits until the page says that no job is open.
 * The speech model is not kept here: the ears check it byte for byte and keep it in their own store.
 */

/** Written in by the build. */
declare const __SHELL__: Shell;

/** What is used of the worker's own world, whose types cannot stand beside the page's. */
interface Worker {
  readonly registration: { readonly scope: string };
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Asked) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}
interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}
interface Asked {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const shell = __SHELL__;
const worker = globalThis as unknown as Worker;
const cacheName = SHELL_CACHES + shell.version;

worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(cacheName).then((cache) =>
      // Past the browser's own cache, or a new build could be put together from old files.
      cache.addAll(shell.files.map((file) => new Request(file, { cache: 'reload' }))),
    ),
  );
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOldShells().then(() => worker.clients.claim()));
});

worker.addEventListener('message', ({ data }) => {
  if (data === TAKE_OVER) void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  if (request.mode === 'navigate') event.respondWith(fromShell(PAGE, request));
  else if (isVoicePack(url)) event.respondWith(fromVoice(request));
  else event.respondWith(fromShell(request, request));
});

async function fromShell(key: Request | string, request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  return (await cache.match(key, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);
}

async function fromVoice(request: Request): Promise<Response> {
  const cache = await caches.open(VOICE_CACHE);
  return (await cache.match(request, { ignoreVary: true })) ?? fetch(request);
}

async function dropOldShells(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names
      .filter((name) => name.startsWith(SHELL_CACHES) && name !== cacheName)
      .map((name) => caches.delete(name)),
  );
}
