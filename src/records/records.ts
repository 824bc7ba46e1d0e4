import type { JobSnapshot } from '../../flows/prompt.ts';
import { Database, wholeLog } from './database.ts';
import { type HeaderPlace, type JobHeader, jobHeader, type ListedJob, listedJob } from './job-header.ts';
import { type Appended, JobLog } from './job-log.ts';
import { type Initials, type LogEntry, NOBODY_ASKED } from './log-entry.ts';
import { entriesOf, isDueWhole, joinedText, type LogPart, partOf } from './log-part.ts';
import { currentRevisions, type MachineProfile, type MachineRevision } from './machine.ts';
import { PHOTO_NOT_KEPT, type PhotoEvent, type PhotoRow, photoTrouble } from './photo.ts';
import { CANCELLED, readBundle, UNREADABLE, type Watched } from './read-bundle.ts';
import { type Replayed, replay } from './replay.ts';
import { type GiveBack, takeRecords } from './tab-lock.ts';
import { type TakenIn, takeIn } from './take-in.ts';
import { type Kept, type Trouble, TroubleError, trouble, troubleFrom } from './trouble.ts';
import { bundleFile, type FileOfRecords, type JobToBundle } from './write-bundle.ts';

export interface RecordsOptions {
  /** Keeps a second tab out; the browser's own unless told otherwise. */
  readonly locks?: LockManager;
  /** Wall clock, milliseconds since 1970. */
  readonly now?: () => number;
}

/** A job as it is on the disk. */
export interface KeptJob {
  readonly header: JobHeader;
  /** In order, without gaps. */
  readonly entries: readonly LogEntry[];
}

export interface SaveToFile {
  readonly progress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** What became of a file, or one sentence on why nothing was taken from it. */
export type TookIn =
  | { readonly ok: true; readonly taken: TakenIn }
  | { readonly ok: false; readonly sentence: string };

/** Jobs read in one transaction and held at once while a file is made. */
const JOBS_A_LOT = 100;

/** Jobs written since the list was kept that are read one by one before it is kept anew. */
const MOST_BESIDE_THE_LIST = 200;

const LIST = 'newest first';

/** What a job is about when it starts. */
export interface JobAbout {
  readonly machineId?: string;
  readonly person?: Initials;
}

/** A job with its log open for writing. */
export interface OpenedJob {
  readonly log: JobLog;
  /** The job as its log leaves it. Send it `{ type: 'void.restarted' }` before anything else. */
  readonly replayed: Replayed;
}

export interface JobQuery {
  /** Words that must all occur in what was said, found or noted, or in the machine's name. Empty for all. */
  readonly words: string;
  readonly limit: number;
}

/**
 * Opens the tablet's records for this tab, or says why they cannot be kept. One tab at a time has them.
 */
export async function openRecords({
  locks = globalThis.navigator?.locks,
  now = Date.now,
}: RecordsOptions = {}): Promise<Kept<Records>> {
  if (!locks) return { ok: false, trouble: trouble('noStorage', 'This browser has no Web Locks.') };
  const giveBack = await takeRecords(locks);
  if (!giveBack) return { ok: false, trouble: trouble('otherTab') };
  const opened = await Database.open();
  const records = opened.ok ? await Records.over(opened.value, giveBack, now) : opened;
  if (!records.ok) await giveBack();
  return records;
}

/** The log of a job that nothing can keep: it lives in memory, and every entry is answered with the trouble. */
export function unkeptJobLog(cause: Trouble, now: () => number = Date.now): JobLog {
  const jobId = crypto.randomUUID();
  const log = new JobLog(
    { jobId, originId: jobId, tabletId: crypto.randomUUID() },
    [],
    replay([]).snapshot,
    async () => ({ ok: false, trouble: cause }),
    now,
  );
  void log.append({ event: { type: 'record.started' }, promptState: NOBODY_ASKED });
  return log;
}

export class Records {
  /** Names this tablet in every line it writes. */
  readonly tabletId: string;
  readonly #database: Database;
  readonly #giveBack: GiveBack;
  readonly #now: () => number;
  readonly #openLogs = new Map<string, JobLog>();
  #latestOrder: number;
  /** The list, newest first, once somebody searched it. */
  #listed: readonly ListedJob[] | undefined;
  /** The list while it is being read, so that nobody reads it twice. */
  #listing: Promise<Kept<readonly ListedJob[]>> | undefined;
  /** The list being kept; whoever searches does not wait for it. */
  #keepingList: Promise<void> = Promise.resolve();
  /** Initials that are on the disk already. */
  readonly #knownPeople = new Set<Initials>();

  /** Reads what every write needs to know. */
  static async over(database: Database, giveBack: GiveBack, now: () => number): Promise<Kept<Records>> {
    const known = await database.write(['tablet', 'jobs'], async (transaction) => {
      const tablet = transaction.objectStore('tablet');
      const tabletId = (await tablet.get('id')) ?? crypto.randomUUID();
      await tablet.put(tabletId, 'id');
      const newest = await transaction.objectStore('jobs').index('byOrder').openKeyCursor(null, 'prev');
      return { tabletId, latestOrder: newest?.key ?? 0 };
    });
    return known.ok ? { ok: true, value: new Records(database, giveBack, now, known.value) } : known;
  }

  private constructor(
    database: Database,
    giveBack: GiveBack,
    now: () => number,
    known: { readonly tabletId: string; readonly latestOrder: number },
  ) {
    this.#database = database;
    this.#giveBack = giveBack;
    this.#now = now;
    this.tabletId = known.tabletId;
    this.#latestOrder = known.latestOrder;
  }

  /** Lets another tab have the records, from when it resolves. Nothing may be written after it. */
  async close(): Promise<void> {
    this.#database.close();
    await this.#giveBack();
  }

  /**
   * Begins a job. The log is there even where its first line could not be put on the disk: `started` says, and the
   * line goes with the next one.
   */
  async startJob(about: JobAbout = {}): Promise<{ readonly log: JobLog; readonly started: Appended }> {
    const id = crypto.randomUUID();
    const log = this.#openLog({ id, originId: id }, [], replay([]).snapshot);
    const started = await log.append({
      event: { type: 'record.started', ...about },
      promptState: NOBODY_ASKED,
    });
    return { log, started };
  }

  /** Opens a job of the list for writing again; undefined where there is none of that id. */
  async openJob(id: string): Promise<Kept<OpenedJob | undefined>> {
    const already = this.#openLogs.get(id);
    if (already) return { ok: true, value: { log: already, replayed: replay(already.entries) } };
    const read = await this.readJob(id);
    if (!read.ok || !read.value) return read as Kept<undefined>;
    const { header, entries } = read.value;
    const replayed = replay(entries);
    return { ok: true, value: { log: this.#openLog(header, entries, replayed.snapshot), replayed } };
  }

  /** Nobody writes the job any more, so a file may bring what another tablet added to it. */
  leaveJob(id: string): void {
    if (this.#openLogs.get(id)?.unsaved.length === 0) this.#openLogs.delete(id);
  }

  /** A job as it is on the disk, for a card or a file; undefined where there is none of that id. */
  readJob(id: string): Promise<Kept<KeptJob | undefined>> {
    return this.#database.read(['jobs', 'logs'], async (transaction) => {
      const header = await transaction.objectStore('jobs').get(id);
      return (
        header && {
          header,
          entries: entriesOf(id, await transaction.objectStore('logs').getAll(wholeLog(id))),
        }
      );
    });
  }

  /** The jobs that match, newest first. */
  async findJobs({ words: asked, limit }: JobQuery): Promise<Kept<readonly JobHeader[]>> {
    const wanted = asked.toLowerCase().split(/\s+/).filter(Boolean);
    if (wanted.length === 0 && !this.#listed) {
      const newest = await this.#newestJobs(limit);
      // Whoever looks at the list may search it next, and that should not wait for the rest of it.
      void this.#list();
      return newest;
    }
    const listed = await this.#list();
    if (!listed.ok) return listed;
    const machines = await this.machines();
    if (!machines.ok) return machines;
    const names = new Map(
      machines.value.map(({ machineId, profile }) => [machineId, profile.name.toLowerCase()]),
    );
    const matching: string[] = [];
    for (const { id, words, machineId } of listed.value) {
      if (matching.length === limit) break;
      const name = names.get(machineId ?? '') ?? '';
      if (wanted.every((word) => words.includes(word) || name.includes(word))) matching.push(id);
    }
    return this.#database.read(['jobs'], async (transaction) => {
      const found = await Promise.all(matching.map((id) => transaction.objectStore('jobs').get(id)));
      return found.filter((header) => header !== undefined);
    });
  }

  /** Every job, newest first. */
  allJobs(): Promise<Kept<readonly JobHeader[]>> {
    return this.#database.read(['jobs'], async (transaction) =>
      (await transaction.objectStore('jobs').index('byOrder').getAll()).reverse(),
    );
  }

  /** Every machine as it was saved last, by name. */
  async machines(): Promise<Kept<readonly MachineRevision[]>> {
    const read = await this.#database.read(['machines'], (transaction) =>
      transaction.objectStore('machines').getAll(),
    );
    if (!read.ok) return read;
    const current = [...currentRevisions(read.value)];
    return { ok: true, value: current.sort((a, b) => a.profile.name.localeCompare(b.profile.name)) };
  }

  /** Every saved state of one machine, oldest first: its readings over time. */
  machineHistory(machineId: string): Promise<Kept<readonly MachineRevision[]>> {
    return this.#database.read(['machines'], (transaction) =>
      transaction.objectStore('machines').getAll(IDBKeyRange.bound([machineId], [machineId, []])),
    );
  }

  /** Saves a machine as it is now, beside what was saved of it before. @param machineId left out for a new one */
  saveMachine(
    profile: MachineProfile,
    machineId: string = crypto.randomUUID(),
  ): Promise<Kept<MachineRevision>> {
    return this.#database.write(['machines'], async (transaction) => {
      const machines = transaction.objectStore('machines');
      const before = await machines.getAll(IDBKeyRange.bound([machineId], [machineId, []]));
      const saved: MachineRevision = {
        machineId,
        revision: (before.at(-1)?.revision ?? 0) + 1,
        tabletId: this.tabletId,
        savedAtMs: this.#now(),
        profile,
      };
      await machines.add(saved);
      return saved;
    });
  }

  /**
   * Attaches a photo to a job: the photo first, then the line of the log that names it, so that no line names a
   * photo that is not there.
   * @returns nothing where it is kept, else one sentence that says why not
   */
  async keepPhoto(
    log: JobLog,
    about: Omit<PhotoEvent, 'type' | 'photoId'>,
    photo: Omit<PhotoRow, 'photoId'>,
  ): Promise<string | undefined> {
    const kept = log.entries.filter(({ event }) => event.type === 'record.photo').length;
    const refused = photoTrouble(photo, kept);
    if (refused) return refused;
    const row: PhotoRow = { ...photo, photoId: crypto.randomUUID() };
    const written = await this.#database.write(['photos'], (transaction) =>
      transaction.objectStore('photos').add(row),
    );
    if (!written.ok) return written.trouble.kind === 'full' ? PHOTO_NOT_KEPT : written.trouble.sentence;
    const noted = await log.append({
      event: { type: 'record.photo', photoId: row.photoId, ...about },
      promptState: NOBODY_ASKED,
    });
    return noted.kept ? undefined : noted.trouble.sentence;
  }

  /** Photos by their ids; one that is not on this tablet is missing. */
  photos(ids: readonly string[]): Promise<Kept<readonly PhotoRow[]>> {
    return this.#database.read(['photos'], async (transaction) => {
      const rows = await Promise.all(ids.map((id) => transaction.objectStore('photos').get(id)));
      return rows.filter((row) => row !== undefined);
    });
  }

  /** Initials of everybody who had a job here. */
  people(): Promise<Kept<readonly Initials[]>> {
    return this.#database.read(['people'], (transaction) => transaction.objectStore('people').getAllKeys());
  }

  /**
   * A file of everything, for another tablet. Memory stays flat however much there is.
   * @param progress told after every lot how many jobs of how many are in
   * @param signal cancels; the result then is undefined
   */
  async saveToFile({ progress, signal }: SaveToFile = {}): Promise<Kept<FileOfRecords | undefined>> {
    const read = await this.#database.read(['jobs', 'machines'], async (transaction) => ({
      jobCount: await transaction.objectStore('jobs').count(),
      machines: await transaction.objectStore('machines').getAll(),
    }));
    if (!read.ok) return read;
    const { jobCount, machines } = read.value;
    try {
      const file = await bundleFile({
        tabletId: this.tabletId,
        savedAtMs: this.#now(),
        machines,
        jobs: this.#lots(jobCount, progress, signal),
        photos: (ids) => this.#photosOneByOne(ids, signal),
      });
      return { ok: true, value: file };
    } catch (error) {
      if (signal?.aborted) return { ok: true, value: undefined };
      return { ok: false, trouble: error instanceof TroubleError ? error.trouble : troubleFrom(error) };
    }
  }

  /** Puts another tablet's file beside the records here: all of it, or nothing and the reason why. */
  async takeInFile(file: Blob, watched: Watched = {}): Promise<TookIn> {
    const bytes = await file.arrayBuffer().catch(() => undefined);
    if (!bytes) return { ok: false, sentence: UNREADABLE };
    const read = await readBundle(new Uint8Array(bytes), watched);
    if (!read.ok) return { ok: false, sentence: read.reason };
    const taken = await takeIn(this.#database, read.bundle, (id) => this.#openLogs.has(id), watched);
    this.#listed = undefined;
    if (!taken.ok) {
      return { ok: false, sentence: watched.signal?.aborted ? CANCELLED : taken.trouble.sentence };
    }
    this.#latestOrder = Math.max(this.#latestOrder, taken.value.latestOrder);
    // Whoever took in many jobs looks for one of them next.
    await this.#list();
    await this.#keepingList;
    return { ok: true, taken: taken.value };
  }

  /** One photo in memory at a time. */
  async *#photosOneByOne(
    ids: readonly string[],
    signal: AbortSignal | undefined,
  ): AsyncGenerator<PhotoRow, void> {
    for (const id of ids) {
      signal?.throwIfAborted();
      const read = await this.photos([id]);
      if (!read.ok) throw new TroubleError(read.trouble);
      yield* read.value;
    }
  }

  /** Every job by its id, a lot at a time. A job being written goes as far as it is known here, kept or not. */
  async *#lots(
    jobCount: number,
    progress: SaveToFile['progress'],
    signal: AbortSignal | undefined,
  ): AsyncGenerator<readonly JobToBundle[], void> {
    let done = 0;
    let reading = this.#lotAfter('');
    for (;;) {
      signal?.throwIfAborted();
      const read = await reading;
      if (!read.ok) throw new TroubleError(read.trouble);
      const last = read.value.at(-1);
      if (!last) return;
      // The next lot is read while this one is written.
      reading = this.#lotAfter(last.header.id);
      yield read.value.map((job) => {
        const written = this.#openLogs.get(job.header.id);
        return written && written.unsaved.length > 0 ? written.known() : job;
      });
      done += read.value.length;
      progress?.(done, Math.max(done, jobCount));
    }
  }

  #lotAfter(id: string): Promise<Kept<readonly JobToBundle[]>> {
    return this.#database.read(['jobs', 'logs'], async (transaction) => {
      const headers = await transaction
        .objectStore('jobs')
        .getAll(IDBKeyRange.lowerBound(id, true), JOBS_A_LOT);
      const last = headers.at(-1);
      if (!last) return [];
      const range = IDBKeyRange.bound([id, []], [last.id, []]);
      const partsOf = new Map<string, LogPart[]>(headers.map((header) => [header.id, []]));
      for (const part of await transaction.objectStore('logs').getAll(range)) {
        partsOf.get(part.jobId)?.push(part);
      }
      return headers.map((header) => ({ header, lines: joinedText(partsOf.get(header.id) ?? []) }));
    });
  }

  #openLog(job: Omit<HeaderPlace, 'order'>, kept: readonly LogEntry[], snapshot: JobSnapshot): JobLog {
    const log = new JobLog(
      { jobId: job.id, originId: job.originId, tabletId: this.tabletId },
      kept,
      snapshot,
      (entries, unsaved, latest) => this.#keep(job, entries, unsaved, latest),
      this.#now,
    );
    this.#openLogs.set(job.id, log);
    return log;
  }

  async #keep(
    { id, originId }: Omit<HeaderPlace, 'order'>,
    entries: readonly LogEntry[],
    unsaved: readonly LogEntry[],
    snapshot: JobSnapshot,
  ): Promise<Kept<void>> {
    const order = Math.max(this.#now(), this.#latestOrder + 1);
    const header = jobHeader({ id, originId, order }, entries, snapshot);
    const newPerson = header.person && !this.#knownPeople.has(header.person) ? header.person : undefined;
    const isWhole = isDueWhole(entries.length - unsaved.length, entries.length, header.status !== 'open');
    const part = partOf(isWhole ? entries : unsaved);
    const written = await this.#database.write(['logs', 'jobs', 'people'], async (transaction) => {
      const logs = transaction.objectStore('logs');
      // Nothing is read and all is asked at once: somebody waits to hear that it is recorded.
      const asked: Promise<unknown>[] = [
        // A write whose answer was lost with the connection may have arrived; then this puts the same again.
        logs.put(part),
        transaction.objectStore('jobs').put(header),
      ];
      if (isWhole) asked.push(logs.delete(IDBKeyRange.bound([id, 0], [id, []], true)));
      if (newPerson) asked.push(transaction.objectStore('people').put({ initials: newPerson }));
      transaction.commit();
      await Promise.all(asked);
    });
    if (!written.ok) return written;
    this.#latestOrder = order;
    if (newPerson) this.#knownPeople.add(newPerson);
    if (this.#listed) this.#listed = [listedJob(header), ...this.#listed.filter((other) => other.id !== id)];
    return written;
  }

  #newestJobs(limit: number): Promise<Kept<readonly JobHeader[]>> {
    return this.#database.read(['jobs'], async (transaction) => {
      const newest: JobHeader[] = [];
      let cursor = await transaction.objectStore('jobs').index('byOrder').openCursor(null, 'prev');
      while (cursor && newest.length < limit) {
        newest.push(cursor.value);
        cursor = await cursor.continue();
      }
      return newest;
    });
  }

  async #list(): Promise<Kept<readonly ListedJob[]>> {
    if (this.#listed) return { ok: true, value: this.#listed };
    this.#listing ??= this.#readList().finally(() => {
      this.#listing = undefined;
    });
    return this.#listing;
  }

  async #readList(): Promise<Kept<readonly ListedJob[]>> {
    const read = await this.#database.read(['jobs', 'list'], async (transaction) => {
      const keptList = await transaction.objectStore('list').get(LIST);
      const since = keptList && IDBKeyRange.lowerBound(keptList.upToOrder, true);
      return { keptList, fresh: await transaction.objectStore('jobs').index('byOrder').getAll(since) };
    });
    if (!read.ok) return read;
    const { keptList, fresh } = read.value;
    const isFresh = new Set(fresh.map(({ id }) => id));
    const earlier = keptList ? (JSON.parse(keptList.jobs) as ListedJob[]) : [];
    const listed = [...fresh.map(listedJob).reverse(), ...earlier.filter(({ id }) => !isFresh.has(id))];
    // A write that was asked for meanwhile commits after this read and is put into the list by whoever wrote it.
    this.#listed = listed;
    const newest = fresh.at(-1);
    if (newest && fresh.length > MOST_BESIDE_THE_LIST) {
      this.#keepingList = this.#keepList(listed, newest.order);
    }
    return { ok: true, value: listed };
  }

  /** The list can be read again row by row, so that it does not matter where it cannot be kept. */
  async #keepList(listed: readonly ListedJob[], upToOrder: number): Promise<void> {
    await this.#database.write(['list'], async (transaction) => {
      const list = transaction.objectStore('list');
      await list.getKey(LIST);
      // A file that was taken in while this write waited has brought jobs of any order.
      if (this.#listed === listed) await list.put({ upToOrder, jobs: JSON.stringify(listed) }, LIST);
    });
  }
}
