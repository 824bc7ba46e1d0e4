import type { JobSnapshot } from '../../flows/prompt.ts';
import { jobHeader } from './job-header.ts';
import type { EntryDraft, LogEntry } from './log-entry.ts';
import { linesText } from './log-part.ts';
import type { Kept, Trouble } from './trouble.ts';
import { bundleFile, type JobToBundle } from './write-bundle.ts';

/** Whether an entry is on the disk. "Recorded" may be said only where it is. */
export type Appended =
  | { readonly kept: true; readonly seq: number }
  | { readonly kept: false; readonly seq: number; readonly trouble: Trouble };

/** Puts the last entries of a log on the disk, all or none. Entries that are there already are passed over. */
export type KeepEntries = (
  entries: readonly LogEntry[],
  unsaved: readonly LogEntry[],
  snapshot: JobSnapshot,
) => Promise<Kept<void>>;

/**
 * The log of one job, open for writing. An entry that could not be put on the disk stays here, in its place, and
 * goes with the next one or with {@link retry}.
 */
export class JobLog {
  readonly jobId: string;
  readonly #originId: string;
  readonly #tabletId: string;
  readonly #now: () => number;
  readonly #keep: KeepEntries;
  readonly #entries: LogEntry[];
  #keptCount: number;
  #snapshot: JobSnapshot;
  #turn: Promise<unknown> = Promise.resolve();

  constructor(
    identity: { readonly jobId: string; readonly originId: string; readonly tabletId: string },
    kept: readonly LogEntry[],
    snapshot: JobSnapshot,
    keep: KeepEntries,
    now: () => number,
  ) {
    this.jobId = identity.jobId;
    this.#originId = identity.originId;
    this.#tabletId = identity.tabletId;
    this.#entries = [...kept];
    this.#keptCount = kept.length;
    this.#snapshot = snapshot;
    this.#keep = keep;
    this.#now = now;
  }

  /** The whole log, on the disk or not. */
  get entries(): readonly LogEntry[] {
    return this.#entries;
  }

  /** What is only in memory. */
  get unsaved(): readonly LogEntry[] {
    return this.#entries.slice(this.#keptCount);
  }

  /**
   * Adds an entry; resolves when it is on the disk, or could not be put there.
   * @param snapshot the job after the event; left out where the event changes nothing the charts know
   */
  append(draft: EntryDraft, snapshot?: JobSnapshot): Promise<Appended> {
    const entry: LogEntry = {
      ...draft,
      jobId: this.jobId,
      seq: this.#entries.length,
      atMs: this.#now(),
      tabletId: this.#tabletId,
    };
    this.#entries.push(entry);
    if (snapshot) this.#snapshot = snapshot;
    return this.#keepUpTo(entry.seq);
  }

  /** Tries again what is only in memory. */
  retry(): Promise<Appended> {
    return this.#keepUpTo(this.#entries.length - 1);
  }

  /** The job as far as it is known here, whether it is on the disk or not. */
  known(): JobToBundle {
    const place = { id: this.jobId, originId: this.#originId, order: this.#entries.at(-1)?.atMs ?? 0 };
    return { header: jobHeader(place, this.#entries, this.#snapshot), lines: linesText(this.#entries) };
  }

  /** A file of this job alone, which needs no store: the way out when nothing can be kept. */
  async saveToFile(): Promise<File> {
    const { file } = await bundleFile({
      tabletId: this.#tabletId,
      savedAtMs: this.#now(),
      machines: [],
      jobs: [[this.known()]],
    });
    return file;
  }

  /** One write at a time, so that no entry overtakes another. */
  #keepUpTo(seq: number): Promise<Appended> {
    const appended = this.#turn.then(async (): Promise<Appended> => {
      if (seq < this.#keptCount) return { kept: true, seq };
      const entries = [...this.#entries];
      const result = await this.#keep(entries, entries.slice(this.#keptCount), this.#snapshot);
      if (!result.ok) return { kept: false, seq, trouble: result.trouble };
      this.#keptCount = entries.length;
      return { kept: true, seq };
    });
    this.#turn = appended;
    return appended;
  }
}
