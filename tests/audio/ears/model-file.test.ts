import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import {
  forgetModel,
  type ModelArchive,
  modelName,
  readModelWords,
  storeModel,
} from '../../../audio/ears/model-file.ts';

/** The first example of FIPS 180-4 for SHA-256: the message "abc" and its digest. */
const contents = new TextEncoder().encode('abc');
const archive: ModelArchive = {
  url: './model/commands.model',
  bytes: 3,
  sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
};

/** The SHA-256 of no bytes at all, as published with the standard's examples. */
const older: ModelArchive = {
  ...archive,
  bytes: 0,
  sha256: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
};

/** A fetch that answers with these parts, one after the other. */
function answering(parts: readonly Uint8Array[], status = 200): typeof fetch & { readonly calls: string[] } {
  const calls: string[] = [];
  const answer = async (input: RequestInfo | URL): Promise<Response> => {
    calls.push(String(input));
    const body = new ReadableStream({
      start(controller) {
        for (const part of parts) controller.enqueue(part);
        controller.close();
      },
    });
    return new Response(body, { status });
  };
  return Object.assign(answer, { calls });
}

/** Everything in the recogniser's store, as vosk-browser would find it. */
async function storedRows(): Promise<Map<string, { contents?: Uint8Array; mode: number; timestamp: Date }>> {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('/vosk', 21);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const store = database.transaction('FILE_DATA').objectStore('FILE_DATA');
  const read = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve) => {
      request.onsuccess = () => resolve(request.result);
    });
  const keys = await read(store.getAllKeys());
  const rows = await read(store.getAll());
  database.close();
  return new Map(keys.map((key, i) => [String(key), rows[i]]));
}

const folder = `/vosk/_model_${archive.sha256}`;

describe('the model file', () => {
  beforeEach(async () => {
    await forgetModel(archive);
    await forgetModel(older);
  });

  it('is put where vosk-browser looks for a finished download', async () => {
    const progress: [number, number][] = [];
    const stored = await storeModel(
      archive,
      (...bytes) => progress.push(bytes),
      undefined,
      answering([contents.slice(0, 1), contents.slice(1)]),
    );
    expect(stored).toEqual({ ok: true, name: modelName(archive), wasFetched: true });
    expect(progress).toEqual([
      [1, 3],
      [3, 3],
    ]);
    const rows = await storedRows();
    expect([...rows.keys()].sort()).toEqual([
      folder,
      `${folder}/downloaded.ok`,
      `${folder}/downloaded.tar.gz`,
    ]);
    expect(rows.get(`${folder}/downloaded.tar.gz`)?.contents).toEqual(contents);
    expect(rows.get(folder)?.mode).toBe(0o40777);
    // The library's own rule for an address: everything but letters, digits and _ becomes _.
    expect(folder).toBe(`/vosk/${modelName(archive).replace(/[\W]/g, '_')}`);
  });

  it('is fetched once', async () => {
    const fetchArchive = answering([contents]);
    await storeModel(archive, undefined, undefined, fetchArchive);
    const again = await storeModel(archive, undefined, undefined, fetchArchive);
    expect(again).toEqual({ ok: true, name: modelName(archive), wasFetched: false });
    expect(fetchArchive.calls).toEqual([archive.url]);
  });

  it('is fetched again once it was forgotten', async () => {
    await storeModel(archive, undefined, undefined, answering([contents]));
    await forgetModel(archive);
    expect((await storedRows()).size).toBe(0);
    const again = await storeModel(archive, undefined, undefined, answering([contents]));
    expect(again).toMatchObject({ ok: true, wasFetched: true });
  });

  it('throws out older models, but only once the new one is here', async () => {
    await storeModel(older, undefined, undefined, answering([]));
    await storeModel(archive, undefined, undefined, answering([], 404));
    expect((await storedRows()).has(`/vosk/_model_${older.sha256}/downloaded.ok`)).toBe(true);
    await storeModel(archive, undefined, undefined, answering([contents]));
    expect([...(await storedRows()).keys()].every((key) => key.startsWith(folder))).toBe(true);
  });

  it('leaves a model that is to be kept where it is, and forgets one without the other', async () => {
    const stored = async () => {
      const keys = [...(await storedRows()).keys()].filter((key) => key.endsWith('/downloaded.ok'));
      return keys.map((key) => key.slice('/vosk/_model_'.length, -'/downloaded.ok'.length)).sort();
    };
    await storeModel(older, undefined, undefined, answering([]));
    await storeModel(archive, undefined, [older], answering([contents]));
    expect(await stored()).toEqual([archive.sha256, older.sha256].sort());
    await forgetModel(archive);
    expect(await stored()).toEqual([older.sha256]);
  });

  it('refuses one bit changed, and stores nothing', async () => {
    const altered = contents.slice();
    altered[1] = (altered[1] as number) ^ 1;
    const stored = await storeModel(archive, undefined, undefined, answering([altered]));
    expect(stored).toEqual({ ok: false, failure: { kind: 'model-altered' } });
    expect((await storedRows()).size).toBe(0);
  });

  it('refuses one that is too long', async () => {
    const stored = await storeModel(archive, undefined, undefined, answering([contents, contents]));
    expect(stored).toEqual({ ok: false, failure: { kind: 'model-altered' } });
  });

  it('says how much of one that was cut short has come', async () => {
    const stored = await storeModel(archive, undefined, undefined, answering([contents.slice(0, 2)]));
    expect(stored).toEqual({ ok: false, failure: { kind: 'model-cut-short', gotBytes: 2, wantedBytes: 3 } });
    expect((await storedRows()).size).toBe(0);
  });

  it('calls a connection that breaks half-way cut short, one that was never there offline', async () => {
    const breaking = async (): Promise<Response> =>
      new Response(
        new ReadableStream({
          start: (controller) => controller.enqueue(contents.slice(0, 1)),
          pull: (controller) => controller.error(new TypeError('network')),
        }),
      );
    expect(await storeModel(archive, undefined, undefined, breaking)).toEqual({
      ok: false,
      failure: { kind: 'model-cut-short', gotBytes: 1, wantedBytes: 3 },
    });
    const offline = async (): Promise<Response> => {
      throw new TypeError('Failed to fetch');
    };
    expect(await storeModel(archive, undefined, undefined, offline)).toEqual({
      ok: false,
      failure: { kind: 'model-offline' },
    });
  });

  it('names the answer of a server that has none', async () => {
    expect(await storeModel(archive, undefined, undefined, answering([], 404))).toEqual({
      ok: false,
      failure: { kind: 'model-missing', httpStatus: 404 },
    });
  });

  it('gives up on a server that stays silent', async () => {
    const silent = (_: RequestInfo | URL, init?: RequestInit): Promise<Response> =>
      new Promise((_resolve, reject) => {
        init?.signal?.addEventListener('abort', () => reject(init.signal?.reason));
      });
    // Only the stall's own clock is turned; the store needs real time.
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      const stored = storeModel(archive, undefined, undefined, silent);
      await vi.waitFor(() => expect(vi.getTimerCount()).toBeGreaterThan(0));
      await vi.advanceTimersByTimeAsync(21_000);
      expect(await stored).toEqual({ ok: false, failure: { kind: 'model-timed-out' } });
    } finally {
      vi.useRealTimers();
    }
  });

  it('tells a full store from one that cannot be opened', async () => {
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(await storeModel(archive, undefined, undefined, answering([contents]))).toEqual({
      ok: false,
      failure: { kind: 'storage-full' },
    });
    put.mockRestore();
    const open = vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(() => {
      throw new DOMException('private window', 'InvalidStateError');
    });
    expect(await storeModel(archive, undefined, undefined, answering([contents]))).toEqual({
      ok: false,
      failure: { kind: 'storage-unavailable' },
    });
    open.mockRestore();
  });
});

describe('the words of a stored model', () => {
  it('are read from the model itself, without the graph’s own marks, also from signed bytes', async () => {
    await storeModel(archive, undefined, undefined, answering([contents]));
    const database = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('/vosk', 21);
      request.onsuccess = () => resolve(request.result);
    });
    const text = new TextEncoder().encode('<eps> 0\n[unk] 1\nboth_knotters 2\n#0 3\n');
    await new Promise<void>((resolve) => {
      const transaction = database.transaction('FILE_DATA', 'readwrite');
      transaction.oncomplete = () => resolve();
      const row = { timestamp: new Date(), mode: 0o100644, contents: new Int8Array(text.buffer) };
      transaction.objectStore('FILE_DATA').put(row, `${folder}/graph/words.txt`);
    });
    database.close();
    expect(await readModelWords(modelName(archive))).toEqual(new Set(['[unk]', 'both_knotters']));
  });

  it('are none while the model is not unpacked', async () => {
    expect(await readModelWords('/model-of-nobody')).toEqual(new Set());
  });
});
