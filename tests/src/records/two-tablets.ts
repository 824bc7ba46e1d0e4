import { IDBFactory } from 'fake-indexeddb';
import type { JobLog } from '../../../src/records/job-log.ts';
import { type ReadBundle, readBundle } from '../../../src/records/read-bundle.ts';
import { openRecords, type Records } from '../../../src/records/records.ts';
import type { Kept } from '../../../src/records/trouble.ts';
import { fakeLocks } from './fake-locks.ts';
import type { WalkedStep } from './random-job.ts';

/** A tablet with a store of its own; work on one happens while its store is the browser's. */
export class Tablet {
  readonly #store = new IDBFactory();
  readonly #locks = fakeLocks();
  #clockMs: number;

  constructor(clockMs: number) {
    this.#clockMs = clockMs;
  }

  /** Opens the records, does the work, and closes them again, as somebody picking the tablet up would. */
  async use<T>(work: (records: Records) => Promise<T>): Promise<T> {
    globalThis.indexedDB = this.#store;
    const records = kept(await openRecords({ locks: this.#locks, now: () => this.#clockMs++ }));
    try {
      return await work(records);
    } finally {
      await records.close();
    }
  }

  /** Everything on it. */
  contents(): Promise<object> {
    return this.use(async (records) => {
      const headers = kept(await records.findJobs({ words: '', limit: 1_000 }));
      const jobs = await Promise.all(headers.map(({ id }) => records.readJob(id).then(kept)));
      const machines = kept(await records.machines());
      return { jobs, machines };
    });
  }

  /** The text of a file with everything on it. */
  file(): Promise<string> {
    return this.use(async (records) => {
      const saved = kept(await records.saveToFile());
      if (!saved) throw new Error('Nobody cancelled the file.');
      return saved.file.text();
    });
  }

  takeIn(file: string | Uint8Array<ArrayBuffer>) {
    return this.use((records) => records.takeInFile(new Blob([file])));
  }
}

/** A file of this text, read. */
export function readText(text: string): Promise<ReadBundle> {
  return readBundle(new TextEncoder().encode(text));
}

export async function write(log: JobLog, steps: readonly WalkedStep[]): Promise<void> {
  for (const { draft, after } of steps) await log.append(draft, after);
}

export function kept<T>(outcome: Kept<T>): T {
  if (outcome.ok) return outcome.value;
  const { kind, detail, sentence } = outcome.trouble;
  throw new Error(`${kind}: ${detail ?? sentence}`);
}
