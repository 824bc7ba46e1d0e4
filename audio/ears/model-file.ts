import type { EarsFailure } from './failures.ts';

/**
 * Brings the model archive onto the tablet and into the place where the recogniser looks for it, checked byte for byte.
 *
 * vosk-browser can fetch an archive itself, but without progress, timeout or check, and what it once stored it never looks at
 * again, good or bad. So the archive is fetched and hashed here and put into the recogniser's own store (an Emscripten file
 * system in IndexedDB) as if it had downloaded it. From then on no network is needed.
 */

/** A speech model as one file. */
export interface ModelArchive {
  /** Where to fetch it, relative to the page or absolute. Must not end in .gz: servers then unpack it on the way. */
  readonly url: string;
  readonly bytes: number;
  /** SHA-256 of the archive, 64 lower-case hexadecimal digits. */
  readonly sha256: string;
}

export type StoredModel =
  /** `name` is what the recogniser is given as the model's address. */
  | { readonly ok: true; readonly name: string; readonly wasFetched: boolean }
  | { readonly ok: false; readonly failure: EarsFailure };

/** Called as bytes arrive: how many of how many. */
export type ModelProgress = (gotBytes: number, wantedBytes: number) => void;

/** No byte for this long ends the fetch. */
const STALLED_AFTER_MS = 20_000;

// The names Emscripten's IDBFS and vosk-browser 0.0.8 use; theirs, not ours to choose.
const DATABASE = '/vosk';
const DATABASE_VERSION = 21;
const STORE = 'FILE_DATA';
const FOLDER_MODE = 0o40_777;
const FILE_MODE = 0o100_666;

/** The address the recogniser knows an archive by. It carries the hash, so another archive is never taken for this one. */
export function modelName(archive: ModelArchive): string {
  return `/model-${archive.sha256}`;
}

/** The folder of a model in the recogniser's store: its address with everything but letters and digits made `_`. */
function folderOf(name: string): string {
  return `${DATABASE}/${name.replace(/\W/g, '_')}`;
}

/**
 * Makes sure the archive is in the recogniser's store. Call it only while no recogniser lives on this page. Never rejects.
 * @param kept what else stays there; every other model goes
 * @param fetchArchive stands in for the browser's fetch in tests
 */
export async function storeModel(
  archive: ModelArchive,
  onProgress: ModelProgress = () => {},
  kept: readonly ModelArchive[] = [],
  fetchArchive: typeof fetch = (...request) => fetch(...request),
): Promise<StoredModel> {
  const name = modelName(archive);
  const folder = folderOf(name);
  const keptFolders = [archive, ...kept].map((each) => folderOf(modelName(each)));
  let database: IDBDatabase | undefined;
  try {
    database = await openDatabase();
    if (await isStored(database, folder)) {
      await evictAllBut(database, keptFolders);
      return { ok: true, name, wasFetched: false };
    }
    const contents = await fetchChecked(archive, onProgress, fetchArchive);
    // Every model in the store is read into memory at each start, so old ones go; not before the new one is here.
    await evictAllBut(database, keptFolders);
    await writeModel(database, folder, contents);
    return { ok: true, name, wasFetched: true };
  } catch (error) {
    return { ok: false, failure: error instanceof ModelFileError ? error.failure : storageFailure(error) };
  } finally {
    database?.close();
  }
}

/** Removes a model that turned out bad or is no longer wanted, so that {@link storeModel} fetches it anew. Never rejects. */
export async function forgetModel(archive: ModelArchive): Promise<void> {
  const folder = folderOf(modelName(archive));
  try {
    const database = await openDatabase();
    try {
      await evict(database, (key) => isIn(folder, key));
    } finally {
      database.close();
    }
  } catch {
    // A store that cannot be opened holds nothing we could use; storeModel will report it.
  }
}

/**
 * The words a stored model knows, read from the model itself, so that the check for unknown words can never be out of date.
 * Call it once the recogniser has unpacked the model; empty when it has not.
 */
export async function readModelWords(name: string): Promise<ReadonlySet<string>> {
  const database = await openDatabase();
  try {
    const entry = await new Promise<unknown>((resolve, reject) => {
      const store = database.transaction(STORE, 'readonly').objectStore(STORE);
      const request = store.get(`${folderOf(name)}/graph/words.txt`);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    if (typeof entry !== 'object' || entry === null || !('contents' in entry)) return new Set();
    // Emscripten keeps some files as signed bytes.
    if (!ArrayBuffer.isView(entry.contents)) return new Set();
    const lines = new TextDecoder().decode(entry.contents).split('\n');
    return new Set(lines.map((line) => line.split(' ')[0] ?? '').filter((word) => isSpoken(word)));
  } finally {
    database.close();
  }
}

/** Word lists also hold the graph's own marks (`<eps>`, `#0`), which no grammar may name. */
function isSpoken(word: string): boolean {
  return word !== '' && !word.startsWith('<') && !word.startsWith('#');
}

class ModelFileError extends Error {
  readonly failure: EarsFailure;

  constructor(failure: EarsFailure) {
    super(failure.kind);
    this.failure = failure;
  }
}

async function fetchChecked(
  archive: ModelArchive,
  onProgress: ModelProgress,
  fetchArchive: typeof fetch,
): Promise<Uint8Array<ArrayBuffer>> {
  const contents = await download(archive, onProgress, fetchArchive);
  if (contents.length < archive.bytes) {
    throw new ModelFileError({
      kind: 'model-cut-short',
      gotBytes: contents.length,
      wantedBytes: archive.bytes,
    });
  }
  if (contents.length > archive.bytes || (await sha256(contents)) !== archive.sha256) {
    throw new ModelFileError({ kind: 'model-altered' });
  }
  return contents;
}

async function download(
  archive: ModelArchive,
  onProgress: ModelProgress,
  fetchArchive: typeof fetch,
): Promise<Uint8Array<ArrayBuffer>> {
  const stall = new AbortController();
  let timer = setTimeout(() => stall.abort(), STALLED_AFTER_MS);
  const parts: Uint8Array[] = [];
  let gotBytes = 0;
  try {
    const response = await fetchArchive(archive.url, { signal: stall.signal });
    if (!response.ok) throw new ModelFileError({ kind: 'model-missing', httpStatus: response.status });
    const reader = response.body?.getReader();
    for (let part = await reader?.read(); part !== undefined && !part.done; part = await reader?.read()) {
      clearTimeout(timer);
      timer = setTimeout(() => stall.abort(), STALLED_AFTER_MS);
      parts.push(part.value);
      gotBytes += part.value.length;
      onProgress(gotBytes, archive.bytes);
    }
  } catch (error) {
    if (error instanceof ModelFileError) throw error;
    if (stall.signal.aborted) throw new ModelFileError({ kind: 'model-timed-out' });
    // A connection that breaks half-way rejects like one that was never there; the bytes tell them apart.
    throw new ModelFileError(
      gotBytes > 0
        ? { kind: 'model-cut-short', gotBytes, wantedBytes: archive.bytes }
        : { kind: 'model-offline' },
    );
  } finally {
    clearTimeout(timer);
  }
  const contents = new Uint8Array(gotBytes);
  let at = 0;
  for (const part of parts) {
    contents.set(part, at);
    at += part.length;
  }
  return contents;
}

async function sha256(contents: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', contents);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Opens the store, made as Emscripten makes it when it is not there yet. */
function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, DATABASE_VERSION);
    request.onupgradeneeded = () => {
      const store = request.result.objectStoreNames.contains(STORE)
        ? request.transaction?.objectStore(STORE)
        : request.result.createObjectStore(STORE);
      if (store?.indexNames.contains('timestamp') === false) {
        store.createIndex('timestamp', 'timestamp', { unique: false });
      }
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Whether the folder holds an unpacked model, or an archive that only waits to be unpacked. */
async function isStored(database: IDBDatabase, folder: string): Promise<boolean> {
  const keys = await keysOf(database);
  return keys.includes(`${folder}/extracted.ok`) || keys.includes(`${folder}/downloaded.ok`);
}

function isIn(folder: string, key: string): boolean {
  return key === folder || key.startsWith(`${folder}/`);
}

function evictAllBut(database: IDBDatabase, keptFolders: readonly string[]): Promise<void> {
  return evict(database, (key) => !keptFolders.some((folder) => isIn(folder, key)));
}

async function evict(database: IDBDatabase, goes: (key: string) => boolean): Promise<void> {
  const evicted = (await keysOf(database)).filter(goes);
  if (evicted.length === 0) return;
  await inOneTransaction(database, (store) => {
    for (const key of evicted) store.delete(key);
  });
}

async function writeModel(database: IDBDatabase, folder: string, contents: Uint8Array): Promise<void> {
  const timestamp = new Date();
  await inOneTransaction(database, (store) => {
    store.put({ timestamp, mode: FOLDER_MODE }, folder);
    store.put({ timestamp, mode: FILE_MODE, contents }, `${folder}/downloaded.tar.gz`);
    store.put({ timestamp, mode: FILE_MODE, contents: new Uint8Array(0) }, `${folder}/downloaded.ok`);
  });
}

function keysOf(database: IDBDatabase): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const request = database.transaction(STORE, 'readonly').objectStore(STORE).getAllKeys();
    request.onsuccess = () => resolve(request.result.map(String));
    request.onerror = () => reject(request.error);
  });
}

function inOneTransaction(database: IDBDatabase, change: (store: IDBObjectStore) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORE, 'readwrite', { durability: 'strict' });
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException('', 'AbortError'));
    transaction.onerror = () => reject(transaction.error);
    change(transaction.objectStore(STORE));
  });
}

function storageFailure(error: unknown): EarsFailure {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  return { kind: isFull ? 'storage-full' : 'storage-unavailable' };
}
