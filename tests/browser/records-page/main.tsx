import { type IDBPDatabase, openDB } from 'idb';
import { render } from 'preact';
import { jobHeader } from '../../../src/records/job-header.ts';
import type { Appended, JobLog } from '../../../src/records/job-log.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { type LogPart, linesText } from '../../../src/records/log-part.ts';
import type { MachineProfile } from '../../../src/records/machine.ts';
import { MOST_PHOTO_BYTES, MOST_PHOTO_BYTES_A_FILE, MOST_PHOTOS_A_JOB } from '../../../src/records/photo.ts';
import { openRecords, type Records } from '../../../src/records/records.ts';
import { replay } from '../../../src/records/replay.ts';
import type { Kept } from '../../../src/records/trouble.ts';
import { bundleFile, type JobToBundle } from '../../../src/records/write-bundle.ts';
import { HandOverSheet } from '../../../src/report/hand-over-sheet.tsx';
import { JobCardSheet } from '../../../src/report/job-card.tsx';
import { makeCard } from '../../../src/report/make-card.ts';
import { straightWalk } from '../../src/records/random-job.ts';
import '../../../src/app.css';

/** What a full tablet takes, milliseconds where nothing else is said. */
export interface RecordsTimes {
  /** From nothing to the first screen of the list. */
  readonly openMs: number;
  /** Right after it, before anything of the rest was read. */
  readonly firstSearchMs: number;
  readonly searchMs: number;
  /** A search that finds nothing and so looks everywhere. */
  readonly missMs: number;
  /** Every header read as a row of its own, which a search without the kept list would begin with. */
  readonly bareHeadersMs: number;
  readonly commitsMs: readonly number[];
  /** A row of one number put by itself, strict too, after every commit. */
  readonly bareCommitsMs: readonly number[];
}

export interface FileTimes {
  readonly fileMs: number;
  readonly fileMb: number;
  readonly photosLeftOut: number;
  readonly progressTold: number;
  readonly heapBeforeMb: number;
  readonly mostHeapMb: number;
}

export interface TakeInTimes {
  readonly takeInMs: number;
  readonly progressTold: number;
  readonly stopMs: number;
  readonly jobsAfterStop: number;
}

let opened: Records | undefined;
let writing: JobLog | undefined;
let fileAtHand: File | undefined;

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

  /** Makes a file of many jobs, as another full tablet would, each with words of its own. @returns its megabytes */
  async makeFile(jobCount: number, logs: readonly (readonly LogEntry[])[]): Promise<number> {
    const models = logs.map((entries) => ({
      header: jobHeader({ id: '', originId: '', order: 0 }, entries, replay(entries).snapshot),
      lines: linesText(entries),
    }));
    function* jobs(): Generator<readonly JobToBundle[]> {
      for (let job = 0; job < jobCount; job++) {
        const model = models[job % models.length];
        if (!model) throw new Error('There is no log to copy.');
        const id = crypto.randomUUID();
        const searchText = `${model.header.searchText} customer ${job % 977}`;
        yield [
          { header: { ...model.header, id, originId: id, order: job + 1, searchText }, lines: model.lines },
        ];
      }
    }
    const { file } = await bundleFile({ tabletId: 'another', savedAtMs: 0, machines: [], jobs: jobs() });
    fileAtHand = file;
    return file.size / 1e6;
  },

  /** How long that file takes to take in, and to stop taking in. */
  async timeTakeIn(): Promise<TakeInTimes> {
    const file = fileAtHand;
    if (!file) throw new Error('No file was made.');
    opened ??= kept(await openRecords());
    const records = opened;
    const abort = new AbortController();
    let stoppedAtMs = 0;
    await records.takeInFile(file, {
      signal: abort.signal,
      progress: (stage, share) => {
        if (stage !== 'takingIn' || share < 0.5 || abort.signal.aborted) return;
        abort.abort();
        stoppedAtMs = performance.now();
      },
    });
    const stopMs = performance.now() - stoppedAtMs;
    const jobsAfterStop = kept(await records.allJobs()).length;
    let progressTold = 0;
    const takeInMs = await timed(async () => {
      const took = await records.takeInFile(file, {
        progress: () => {
          progressTold += 1;
        },
      });
      if (!took.ok) throw new Error(took.sentence);
    });
    return { takeInMs, progressTold, stopMs, jobsAfterStop };
  },

  /** The jobs of that file put as bare rows of text, in one transaction, milliseconds. */
  async timeBarePut(): Promise<number> {
    const lines = ((await fileAtHand?.text()) ?? '')
      .split('\n')
      .filter((line) => line.includes('"entries":'));
    const bare = await openBare();
    const barePutMs = await timed(async () => {
      const transaction = bare.transaction('rows', 'readwrite', { durability: 'strict' });
      for (const [at, text] of lines.entries()) transaction.objectStore('rows').put(text, at);
      await transaction.done;
    });
    await bare.clear('rows');
    bare.close();
    return barePutMs;
  },

  /** How long the list, the searches and the commits take. */
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
    const bareHeadersMs = await timed(async () => {
      const db = await openDB('knotwright-records');
      await db.getAll('jobs');
      db.close();
    });
    const commitsMs: number[] = [];
    const bareCommitsMs: number[] = [];
    const bare = await openBare();
    for (let job = 0; job < 6; job++) {
      const { log } = await records.startJob({ person: 'RB' });
      for (const { draft, after } of straightWalk(59)) {
        commitsMs.push(await timed(() => log.append(draft, after)));
        bareCommitsMs.push(
          await timed(() => {
            const transaction = bare.transaction('rows', 'readwrite', { durability: 'strict' });
            transaction.objectStore('rows').put(commitsMs.length, 'one number');
            transaction.commit();
            return transaction.done;
          }),
        );
      }
      records.leaveJob(log.jobId);
    }
    bare.close();
    return { openMs, firstSearchMs, searchMs, missMs, bareHeadersMs, commitsMs, bareCommitsMs };
  },

  /** How long a file of everything takes, and what it costs in memory. */
  async timeFile(): Promise<FileTimes> {
    opened ??= kept(await openRecords());
    const records = opened;
    const heapBeforeMb = heapMb();
    let mostHeapMb = 0;
    let progressTold = 0;
    let photosLeftOut = 0;
    let bytes = 0;
    const fileMs = await timed(async () => {
      const saved = kept(
        await records.saveToFile({
          progress: () => {
            progressTold += 1;
            mostHeapMb = Math.max(mostHeapMb, heapMb());
          },
        }),
      );
      bytes = saved?.file.size ?? 0;
      photosLeftOut = saved?.photosLeftOut ?? 0;
    });
    return { fileMs, fileMb: bytes / 1e6, photosLeftOut, progressTold, heapBeforeMb, mostHeapMb };
  },

  /** Attaches as many photos of the largest size as go into one file, and one more. */
  async addPhotos(): Promise<void> {
    opened ??= kept(await openRecords());
    const photo = { type: 'image/jpeg', bytes: new Uint8Array(MOST_PHOTO_BYTES) } as const;
    for (let left = MOST_PHOTO_BYTES_A_FILE / MOST_PHOTO_BYTES + 1; left > 0; left -= MOST_PHOTOS_A_JOB) {
      const { log } = await opened.startJob();
      for (let taken = 0; taken < Math.min(left, MOST_PHOTOS_A_JOB); taken++) {
        const trouble = await opened.keepPhoto(log, { of: 'machine' }, photo);
        if (trouble) throw new Error(trouble);
      }
    }
  },

  /** From the tap on "Stop", half way through a file, to the end of the work, milliseconds. */
  async timeStop(): Promise<number> {
    opened ??= kept(await openRecords());
    const abort = new AbortController();
    let stoppedAtMs = 0;
    await opened.saveToFile({
      signal: abort.signal,
      progress: (done, of) => {
        if (done < of / 2 || abort.signal.aborted) return;
        abort.abort();
        stoppedAtMs = performance.now();
      },
    });
    return performance.now() - stoppedAtMs;
  },

  /** Every row of the logs read by a bare cursor, one at a time, milliseconds. */
  timeBareCursor(): Promise<number> {
    return timed(async () => {
      const db = await openDB('knotwright-records');
      let cursor = await db.transaction('logs').objectStore('logs').openCursor();
      while (cursor) cursor = await cursor.continue();
      db.close();
    });
  },

  /** The same rows in the fewest calls, a hundred each, milliseconds. */
  timeBareRead(): Promise<number> {
    return timed(async () => {
      const db = await openDB('knotwright-records');
      let last: IDBKeyRange | undefined;
      for (;;) {
        const rows: LogPart[] = await db.getAll('logs', last, 100);
        const end = rows.at(-1);
        if (!end) break;
        last = IDBKeyRange.lowerBound([end.jobId, end.seq], true);
      }
      db.close();
    });
  },

  /** Lays a job on paper. */
  show(
    sheet: 'jobCard' | 'handOver',
    entries: readonly LogEntry[],
    machine?: MachineProfile,
    photos: Readonly<Record<string, string>> = {},
  ): void {
    const card = makeCard({ entries, ...(machine ? { machine } : {}) });
    const root = document.getElementById('app');
    if (!root) throw new Error('The page has no root.');
    render(
      sheet === 'jobCard' ? (
        <JobCardSheet card={card} photoUrls={new Map(Object.entries(photos))} />
      ) : (
        <HandOverSheet card={card} />
      ),
      root,
    );
  },
};

export type RecordsPage = typeof recordsPage;

Object.assign(window, { recordsPage });

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

/** A store beside the records, with nothing of the app about it. */
function openBare(): Promise<IDBPDatabase> {
  return openDB('bare', 1, { upgrade: (db) => void db.createObjectStore('rows') });
}

/** Chromium alone tells, and truly only when started to; zero elsewhere. */
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
