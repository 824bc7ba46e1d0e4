import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { JobHeader } from './job-header.ts';
import type { Initials, LogEntry } from './log-entry.ts';
import { type LogPart, partOf } from './log-part.ts';
import type { MachineRevision } from './machine.ts';
import type { PhotoRow } from './photo.ts';
import { isLostConnection, type Kept, trouble, troubleFrom } from './trouble.ts';

/** Everything the tablet keeps. */
export interface RecordsSchema extends DBSchema {
  /** Lines are only ever added; now and then the parts of a log are written anew as one. */
  logs: { key: [jobId: string, seq: number]; value: LogPart };
  /** The list as it was some time ago, read in one go; any job written since has a higher order. */
  list: { key: 'newest first'; value: KeptList };
  jobs: { key: string; value: JobHeader; indexes: { byOrder: number; byOrigin: string } };
  /** Append only. */
  machines: { key: [machineId: string, revision: number, tabletId: string]; value: MachineRevision };
  people: { key: Initials; value: { readonly initials: Initials } };
  tablet: { key: 'id'; value: string };
  /** Append only; which job a photo belongs to stands in the log of that job. */
  photos: { key: string; value: PhotoRow };
}

/** What a search needs of every job of an order up to this one. It repeats the headers and may be dropped any time. */
export interface KeptList {
  readonly upToOrder: number;
  /** {@link ListedJob}s as JSON. */
  readonly jobs: string;
}

/** How logs were kept before version 3: a row a line. */
interface FormerSchema extends DBSchema {
  entries: { key: [jobId: string, seq: number]; value: LogEntry };
  logs: RecordsSchema['logs'];
  jobs: RecordsSchema['jobs'];
}

export type RecordsDatabase = IDBPDatabase<RecordsSchema>;

const NAME = 'knotwright-records';
/** 2 added the photos; 3 keeps many lines of a log in a row, and the list. */
const VERSION = 3;

type Mode = 'readonly' | 'readwrite';
type Transaction<Store extends StoreNames<RecordsSchema>, M extends Mode> = IDBPTransaction<
  RecordsSchema,
  Store[],
  M
>;

type UpgradeTransaction<Schema extends DBSchema> = IDBPTransaction<
  Schema,
  StoreNames<Schema>[],
  'versionchange'
>;

/**
 * The store, opened and kept open. The browser may close it under a page in the background, so whatever fails for
 * that reason is tried once more on a store opened anew.
 */
export class Database {
  #open: RecordsDatabase | undefined;
  #everOpened = false;

  /** Opens the store, or says why it cannot be opened. */
  static async open(): Promise<Kept<Database>> {
    const database = new Database();
    const reached = await database.#run(async () => undefined);
    return reached.ok ? { ok: true, value: database } : reached;
  }

  /** Reads from some stores in one transaction. `work` may await nothing but the transaction. */
  read<Store extends StoreNames<RecordsSchema>, T>(
    stores: Store[],
    work: (transaction: Transaction<Store, 'readonly'>) => Promise<T>,
  ): Promise<Kept<T>> {
    return this.#run((db) => whole(db.transaction(stores, 'readonly'), work));
  }

  /**
   * Writes to some stores in one transaction and resolves only after the browser has flushed it to the disk: idb's
   * shortcut methods cannot ask for that. On any error nothing of it is kept. `work` may await nothing but the
   * transaction, and must bear to be run twice.
   */
  write<Store extends StoreNames<RecordsSchema>, T>(
    stores: Store[],
    work: (transaction: Transaction<Store, 'readwrite'>) => Promise<T>,
  ): Promise<Kept<T>> {
    return this.#run((db) => whole(db.transaction(stores, 'readwrite', { durability: 'strict' }), work));
  }

  close(): void {
    this.#open?.close();
    this.#open = undefined;
  }

  async #run<T>(work: (db: RecordsDatabase) => Promise<T>): Promise<Kept<T>> {
    if (typeof indexedDB === 'undefined') return { ok: false, trouble: trouble('noStorage') };
    const wasOpen = this.#open !== undefined;
    try {
      return { ok: true, value: await work(await this.#live()) };
    } catch (error) {
      if (error instanceof InTheWay) return { ok: false, trouble: trouble('blocked') };
      if (!isLostConnection(error)) return { ok: false, trouble: troubleFrom(error) };
      this.close();
      if (wasOpen) return this.#run(work);
      // A store that never opened is no lost connection: this browser has no place for it.
      return {
        ok: false,
        trouble: this.#everOpened ? troubleFrom(error) : trouble('noStorage', String(error)),
      };
    }
  }

  async #live(): Promise<RecordsDatabase> {
    this.#open ??= await open(() => {
      this.#open = undefined;
    });
    this.#everOpened = true;
    return this.#open;
  }
}

/** An older connection that will not close keeps this one waiting. */
class InTheWay extends Error {}

function open(onClosed: () => void): Promise<RecordsDatabase> {
  return new Promise((resolve, reject) => {
    let gaveUp = false;
    openDB<RecordsSchema>(NAME, VERSION, {
      upgrade: createStores,
      blocked: () => {
        gaveUp = true;
        reject(new InTheWay());
      },
      // A newer app wants to change the stores: it must not wait for us.
      blocking: (_current, _blocked, event) => {
        (event.target as IDBDatabase).close();
        onClosed();
      },
      terminated: onClosed,
    }).then((db) => (gaveUp ? db.close() : resolve(db)), reject);
  });
}

/** Brings a store of any earlier version up to this one; nothing kept is lost. */
async function createStores(
  db: RecordsDatabase,
  oldVersion: number,
  _newVersion: number | null,
  transaction: UpgradeTransaction<RecordsSchema>,
): Promise<void> {
  if (oldVersion < 1) createFirstStores(db);
  if (oldVersion < 2) db.createObjectStore('photos', { keyPath: 'photoId' });
  if (oldVersion < 3) {
    db.createObjectStore('logs', { keyPath: ['jobId', 'seq'] });
    db.createObjectStore('list');
  }
  if (oldVersion === 1 || oldVersion === 2) {
    const former = transaction as unknown as UpgradeTransaction<FormerSchema>;
    await packLines(db as unknown as IDBPDatabase<FormerSchema>, former).catch(() => {
      // Whoever opens the store hears of it; the store stays as it was.
      transaction.done.catch(() => undefined);
      abort(transaction);
    });
  }
}

function createFirstStores(db: RecordsDatabase): void {
  const jobs = db.createObjectStore('jobs', { keyPath: 'id' });
  jobs.createIndex('byOrder', 'order');
  jobs.createIndex('byOrigin', 'originId');
  db.createObjectStore('machines', { keyPath: ['machineId', 'revision', 'tabletId'] });
  db.createObjectStore('people', { keyPath: 'initials' });
  db.createObjectStore('tablet');
}

/** Writes every log of the former kind as one part. */
async function packLines(
  db: IDBPDatabase<FormerSchema>,
  transaction: UpgradeTransaction<FormerSchema>,
): Promise<void> {
  for (const id of await transaction.objectStore('jobs').getAllKeys()) {
    const entries = await transaction.objectStore('entries').getAll(wholeLog(id));
    if (entries.length > 0) await transaction.objectStore('logs').add(partOf(entries));
  }
  db.deleteObjectStore('entries');
}

/** Runs the work and waits for the commit; a failure of either undoes all of it. */
async function whole<Store extends StoreNames<RecordsSchema>, M extends Mode, T>(
  transaction: Transaction<Store, M>,
  work: (transaction: Transaction<Store, M>) => Promise<T>,
): Promise<T> {
  const committed = transaction.done.then(
    () => undefined,
    (error: unknown) => ({ error }),
  );
  try {
    const value = await work(transaction);
    const failure = await committed;
    if (failure) throw failure.error;
    return value;
  } catch (error) {
    abort(transaction);
    // Why the transaction ended says more than the request that was swept away with it.
    const reason = (await committed)?.error;
    throw reason instanceof DOMException && reason.name !== 'AbortError' ? reason : error;
  }
}

function abort(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already, which is all that is wanted.
  }
}

/** Every key of a job's log: an empty array sorts after every number. */
export function wholeLog(jobId: string): IDBKeyRange {
  return IDBKeyRange.bound([jobId], [jobId, []]);
}
