import type { Bundle, BundledJob } from './bundle.ts';
import { type Database, wholeLog } from './database.ts';
import type { JobHeader } from './job-header.ts';
import { arrivalOf, type KnownJob } from './merge.ts';
import type { Kept } from './trouble.ts';

/** What became of a file's jobs and machines. */
export interface TakenIn {
  readonly newJobs: number;
  /** Went on from where this tablet's copy stopped. */
  readonly extended: number;
  /** Went another way than this tablet's copy, so that both are kept. */
  readonly keptBeside: number;
  readonly alreadyHere: number;
  readonly machineRevisions: number;
}

type Counts = { -readonly [Count in keyof TakenIn]: TakenIn[Count] };

/**
 * Puts a file's records beside those here, all of it or nothing. Nothing here is overwritten, and a file taken in
 * twice changes nothing the second time.
 * @param isBeingWritten whether a job is open for writing now
 */
export function takeIn(
  database: Database,
  { jobs, machines, photos }: Bundle,
  isBeingWritten: (jobId: string) => boolean,
): Promise<Kept<TakenIn>> {
  return database.write(['jobs', 'entries', 'machines', 'people', 'photos'], async (transaction) => {
    const headers = transaction.objectStore('jobs');
    const entries = transaction.objectStore('entries');
    const revisions = transaction.objectStore('machines');
    const counts: Counts = { newJobs: 0, extended: 0, keptBeside: 0, alreadyHere: 0, machineRevisions: 0 };

    for (const job of jobs) {
      const copies: KnownJob[] = [];
      for (const { id } of await headers.index('byOrigin').getAll(job.header.originId)) {
        copies.push({
          id,
          entries: await entries.getAll(wholeLog(id)),
          isBeingWritten: isBeingWritten(id),
        });
      }
      const arrival = arrivalOf(job, copies);
      counts[COUNTED_AS[arrival.kind]] += 1;
      if (arrival.kind === 'known') continue;
      const { id, from } =
        arrival.kind === 'extends'
          ? arrival
          : { id: (await headers.get(job.header.id)) ? crypto.randomUUID() : job.header.id, from: 0 };
      await Promise.all(linesFrom(job, id, from).map((line) => entries.add(line)));
      await headers.put({ ...job.header, id });
      if (job.header.person) await transaction.objectStore('people').put({ initials: job.header.person });
    }

    for (const revision of machines) {
      const { machineId, revision: number, tabletId } = revision;
      if (await revisions.getKey([machineId, number, tabletId])) continue;
      await revisions.add(revision);
      counts.machineRevisions += 1;
    }
    for (const photo of photos) {
      if (!(await transaction.objectStore('photos').getKey(photo.photoId))) {
        await transaction.objectStore('photos').add(photo);
      }
    }
    return counts;
  });
}

const COUNTED_AS = {
  known: 'alreadyHere',
  new: 'newJobs',
  extends: 'extended',
  besides: 'keptBeside',
} as const satisfies Readonly<Record<ReturnType<typeof arrivalOf>['kind'], keyof TakenIn>>;

function linesFrom({ entries }: BundledJob, jobId: JobHeader['id'], from: number) {
  return entries.slice(from).map((entry, index) => ({ ...entry, jobId, seq: from + index }));
}
