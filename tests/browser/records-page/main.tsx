import { render } from 'preact';
import { Database } from '../../../src/records/database.ts';
import { jobHeader } from '../../../src/records/job-header.ts';
import type { Appended, JobLog } from '../../../src/records/job-log.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { openRecords, type Records } from '../../../src/records/records.ts';
import { replay } from '../../../src/records/replay.ts';
import type { Kept } from '../../../src/records/trouble.ts';
import { HandOverSheet } from '../../../src/report/hand-over-sheet.tsx';
import { JobCardSheet } from '../../../src/report/job-card.tsx';
import { makeCard } from '../../../src/report/make-card.ts';
import '../../../src/app.css';

const JOBS_A_LOT = 200;

export interface RecordsTimes {
  /** From nothing to the first screen of the list. */
  readonly openMs: number;
  readonly firstSearchMs: number;
  readonly searchMs: number;
  /** A search that finds nothing and so looks everywhere. */
  readonly missMs: number;
  readonly commitsMs: readonly number[];
  readonly fileMs: number;
  readonly fileMb: number;
  readonly mostHeapMb: number;
}

let opened: Records | undefined;
let writing: JobLog | undefined;

/** What the tests of the records may do in a real browser. */
const recordsPage = {
  /** The trouble, or that there is none. */
  async tryToOpen(): Promise<string> {
    const outcome = await openRecords();
    return outcome.ok ? 'opened' : outcome.trouble.kind;
  },

  async startJob() {
    opened ??= kept(await openRecords());
    writing = (await opened.startJob()).log;
    return { log: writing, writeOn: recordsPage.writeOn };
  },

  /** Adds a note to the job that was started. */
  writeOn(text: string): Promise<Appended> {
    return writingLog().append({ event: { type: 'record.note', text }, promptState: 'record' });
  },

  retry(): Promise<Appended> {
    return writingLog().retry();
  },

  /** Every line of the newest job, as it is on the disk. */
  async everyLine(): Promise<readonly LogEntry[]> {
    opened ??= kept(await openRecords());
    const [newest] = kept(await opened.findJobs({ words: '', limit: 1 }));
    return (newest && kept(await opened.readJob(newest.id))?.entries) ?? [];
  },

  /** Fills the store with copies of a job, a lot of them in each transaction. */
  async fill(jobCount: number, entries: readonly LogEntry[]): Promise<void> {
    const database = kept(await Database.open());
    const { snapshot } = replay(entries);
    for (let from = 0; from < jobCount; from += JOBS_A_LOT) {
      kept(
        await database.write(['jobs', 'entries'], async (transaction) => {
          for (let job = from; job < Math.min(from + JOBS_A_LOT, jobCount); job++) {
            const id = `job ${job}`;
            const header = jobHeader({ id, originId: id, order: job }, entries, snapshot);
            const searchText = `${header.searchText} customer ${job % 977}`;
            await transaction.objectStore('jobs').put({ ...header, searchText });
            await Promise.all(
              entries.map((entry) => transaction.objectStore('entries').put({ ...entry, jobId: id })),
            );
          }
        }),
      );
    }
    database.close();
  },

  /** How long the list, the searches, the commits and the file take, in milliseconds. */
  async time(): Promise<RecordsTimes> {
    const openMs = await timed(async () => {
      opened = kept(await openRecords());
      kept(await opened.findJobs({ words: '', limit: 60 }));
    });
    const records = opened;
    if (!records) throw new Error('The records did not open.');
    const firstSearchMs = await timed(() => records.findJobs({ words: 'customer 345', limit: 60 }));
    const searchMs = await timed(() => records.findJobs({ words: 'left customer 345', limit: 60 }));
    const missMs = await timed(() => records.findJobs({ words: 'nobody said that', limit: 60 }));
    await recordsPage.startJob();
    const commitsMs: number[] = [];
    for (let line = 0; line < 200; line++) {
      commitsMs.push(await timed(() => recordsPage.writeOn(`note ${line}`)));
    }
    let mostHeapMb = 0;
    let bytes = 0;
    const fileMs = await timed(async () => {
      const file = kept(
        await records.saveToFile({
          progress: () => {
            mostHeapMb = Math.max(mostHeapMb, heapMb());
          },
        }),
      );
      bytes = file?.size ?? 0;
    });
    return { openMs, firstSearchMs, searchMs, missMs, commitsMs, fileMs, fileMb: bytes / 1e6, mostHeapMb };
  },

  /** Lays a job on paper. */
  show(sheet: 'jobCard' | 'handOver', entries: readonly LogEntry[]): void {
    const card = makeCard({ entries });
    const root = document.getElementById('app');
    if (!root) throw new Error('The page has no root.');
    render(sheet === 'jobCard' ? <JobCardSheet card={card} /> : <HandOverSheet card={card} />, root);
  },
};

export type RecordsPage = typeof recordsPage;

Object.assign(window, { recordsPage });

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

/** Chromium alone tells; zero elsewhere. */
function heapMb(): number {
  const { memory } = performance as Performance & { readonly memory?: { readonly usedJSHeapSize: number } };
  return (memory?.usedJSHeapSize ?? 0) / 1e6;
}

function writingLog(): JobLog {
  if (!writing) throw new Error('No job was started.');
  return writing;
}

function kept<T>(outcome: Kept<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`${outcome.trouble.kind}: ${outcome.trouble.detail ?? ''}`);
}
