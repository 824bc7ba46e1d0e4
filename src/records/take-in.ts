import type { BundledJob } from './bundle.ts';
import { type Database, wholeLog } from './database.ts';
import { entriesOf } from './log-part.ts';
import { arrivalOf, type KnownJob } from './merge.ts';
import type { Bundle, Watched } from './read-bundle.ts';
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
  /** Photos that were left out when the file was made. */
  readonly photosLeftOut: number;
  /** Highest order among the file's jobs; 0 where it has none. */
  readonly latestOrder: number;
}

type Counts = { -readonly [Count in keyof TakenIn]: TakenIn[Count] };

/** Jobs laid beside those here at once. */
const JOBS_A_LOT = 100;

/**
 * Puts a file's records beside those here, all of it or nothing. Nothing here is overwritten, and a file taken in
 * twice changes nothing the second time.
 * @param isBeingWritten whether a job is open for writing now
 */
export function takeIn(
  database: Database,
  bundle: Bundle,
  isBeingWritten: (jobId: string) => boolean,
  { progress, signal }: Watched = {},
): Promise<Kept<TakenIn>> {
  const stores = ['jobs', 'logs', 'list', 'machines', 'people', 'photos'] as const;
  return database.write([...stores], async (transaction) => {
    const headers = transaction.objectStore('jobs');
    const logs = transaction.objectStore('logs');
    const revisions = transaction.objectStore('machines');
    const photos = transaction.objectStore('photos');
    const { jobCount, photoCount, photosLeftOut } = bundle;
    const counts: Counts = {
      newJobs: 0,
      extended: 0,
      keptBeside: 0,
      alreadyHere: 0,
      machineRevisions: 0,
      photosLeftOut,
      latestOrder: 0,
    };
    // The jobs of a file may be of any order, so that the list that is kept is the list no more.
    await transaction.objectStore('list').clear();

    const takeInJob = async (job: BundledJob) => {
      counts.latestOrder = Math.max(counts.latestOrder, job.header.order);
      const ids = await headers.index('byOrigin').getAllKeys(job.header.originId);
      const copies = await Promise.all(
        ids.map(
          async (id): Promise<KnownJob> => ({
            id,
            entries: entriesOf(id, await logs.getAll(wholeLog(id))),
            isBeingWritten: isBeingWritten(id),
          }),
        ),
      );
      const arrival = arrivalOf(job, copies);
      counts[COUNTED_AS[arrival.kind]] += 1;
      if (arrival.kind === 'known') return;
      const { id, from } =
        arrival.kind === 'extends'
          ? arrival
          : { id: (await headers.getKey(job.header.id)) ? crypto.randomUUID() : job.header.id, from: 0 };
      const { person } = job.header;
      await Promise.all([
        logs.add({ jobId: id, seq: from, lines: JSON.stringify(job.entries.slice(from)) }),
        headers.put({ ...job.header, id }),
        ...(person ? [transaction.objectStore('people').put({ initials: person })] : []),
      ]);
    };

    for (let from = 0; from < jobCount; from += JOBS_A_LOT) {
      if (signal?.aborted) throw new Error('Cancelled; nothing of it is kept.');
      const lot = Array.from({ length: Math.min(JOBS_A_LOT, jobCount - from) }, (_, place) =>
        bundle.job(from + place),
      );
      // Jobs of one origin wait for each other, so that the later one finds the earlier; the others need not.
      await Promise.all(
        byOrigin(lot).map(async (jobs) => {
          for (const job of jobs) await takeInJob(job);
        }),
      );
      progress?.('takingIn', (from + lot.length) / (jobCount + photoCount));
    }

    for (const revision of bundle.machines) {
      const { machineId, revision: number, tabletId } = revision;
      if (await revisions.getKey([machineId, number, tabletId])) continue;
      await revisions.add(revision);
      counts.machineRevisions += 1;
    }
    for (let place = 0; place < photoCount; place++) {
      if (signal?.aborted) throw new Error('Cancelled; nothing of it is kept.');
      const photo = bundle.photo(place);
      if (!(await photos.getKey(photo.photoId))) await photos.add(photo);
      progress?.('takingIn', (jobCount + place + 1) / (jobCount + photoCount));
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

function byOrigin(jobs: readonly BundledJob[]): readonly BundledJob[][] {
  const groups = new Map<string, BundledJob[]>();
  for (const job of jobs) {
    const { originId } = job.header;
    groups.set(originId, [...(groups.get(originId) ?? []), job]);
  }
  return [...groups.values()];
}
