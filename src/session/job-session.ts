import { type ReadonlySignal, signal } from '@preact/signals';
import { createActor, getNextSnapshot } from 'xstate';
import type { Counts } from '../../flows/diagnosis/learning.ts';
import type { WorkedFigure } from '../../flows/figures-asked/dialogue.ts';
import type { HeardEvent, JobEvent, SystemVoid } from '../../flows/heard.ts';
import { jobMachine } from '../../flows/job.ts';
import type { MachineBand } from '../../flows/machine-values.ts';
import type { CountEntry, DatedEntry } from '../../flows/miss-log/entry.ts';
import { type JobSnapshot, type Prompt, promptOf } from '../../flows/prompt.ts';
import type { Appended, JobLog } from '../records/job-log.ts';
import { type EntryDraft, type FigureEvent, NOBODY_ASKED } from '../records/log-entry.ts';
import type { RecordState } from './view.ts';

/** What a voice leaves in the record beside its meaning. */
export type VoiceTrace = Pick<EntryDraft, 'heardText' | 'levelDbfs'>;

/**
 * One job while it runs: the charts, and the log that they can be worked out from again. Voice, buttons and the
 * tablet's own watch all come in through here, one event at a time.
 */
export interface JobSession {
  readonly snapshot: ReadonlySignal<JobSnapshot>;
  readonly record: ReadonlySignal<RecordState>;
  /** Counts what happened by itself and has to be said at once; only in a drill does anything. */
  readonly happenings?: ReadonlySignal<number>;
  prompt(): Prompt;
  /** Whether the job takes an event now; what it does not take is not an answer to what was asked. */
  takes(event: JobEvent): boolean;
  /** What would be asked after an event, without sending it. */
  preview(event: HeardEvent): Prompt;
  /**
   * Sends an event to the charts and puts it on the disk. The charts move at once, so that a void is never late;
   * the promise tells when the line is kept, and nothing is called recorded before.
   */
  send(event: HeardEvent, trace?: VoiceTrace): Promise<Appended>;
  /** Has a new job work with what this tablet has learnt; it goes into the log, so that the job replays as it ran. */
  takeEstimates(counts: Counts): Promise<Appended>;
  /** Takes the lockout away, for a reason the tablet noticed by itself. */
  voidLockout(reason: SystemVoid): Promise<Appended>;
  /** Tells the job what is known of its machine; only a job that has just begun takes it. */
  knowMachine(bands: readonly MachineBand[]): Promise<Appended>;
  /** Puts a worked-out figure into the log; the charts never see it. */
  noteFigure(worked: WorkedFigure, trace?: VoiceTrace): Promise<Appended>;
  /** Puts one thing counted into the log; the charts never see it. */
  noteCounted(entry: CountEntry, trace?: VoiceTrace): Promise<Appended>;
  /** What was counted in this job, in order. */
  counted(): readonly DatedEntry[];
  /** The figures worked out in this job, the latest last. */
  figures(): readonly FigureEvent[];
  /** Tries again what could not be put on the disk. */
  retry(): Promise<Appended>;
  dispose(): void;
}

/**
 * Runs a job on from where its log left it.
 * @param log open for writing
 * @param from the snapshot the log leads to; left out for a new job. Whoever resumes voids the lockout first.
 */
export function runJob(log: JobLog, from?: JobSnapshot): JobSession {
  const actor = createActor(
    jobMachine,
    from ? { snapshot: jobMachine.getPersistedSnapshot(from) } : {},
  ).start();
  const snapshot = signal<JobSnapshot>(actor.getSnapshot());
  const record = signal<RecordState>({ kind: 'kept' });

  async function note(appending: Promise<Appended>): Promise<Appended> {
    record.value = { kind: 'keeping' };
    const appended = await appending;
    record.value = appended.kept
      ? { kind: 'kept' }
      : { kind: 'notKept', sentence: appended.trouble.sentence };
    return appended;
  }

  function apply(event: JobEvent, trace: VoiceTrace = {}): Promise<Appended> {
    const promptState = promptOf(actor.getSnapshot()).state;
    actor.send(event);
    snapshot.value = actor.getSnapshot();
    return note(log.append({ event, promptState, ...trace }, snapshot.value));
  }

  return {
    snapshot,
    record,
    prompt: () => promptOf(snapshot.value),
    takes: (event) => actor.getSnapshot().can(event),
    preview: (event) => promptOf(getNextSnapshot(jobMachine, snapshot.value, event)),
    send: apply,
    takeEstimates: (counts) => apply({ type: 'estimates.taken', counts }),
    voidLockout: (type) => apply({ type }),
    knowMachine: (bands) => apply({ type: 'machine.known', bands }),
    noteFigure: ({ figure, values, say, assumptions }, trace = {}) => {
      const granted = assumptions.map(({ says, standing }) => `${says} (${standing})`);
      const event: FigureEvent = { type: 'record.figure', figure, values, said: say, granted };
      return note(log.append({ event, promptState: NOBODY_ASKED, ...trace }));
    },
    noteCounted: (entry, trace = {}) =>
      note(
        log.append({
          event: { type: 'record.counted', entry, repairs: snapshot.value.context.repairs.length },
          promptState: NOBODY_ASKED,
          ...trace,
        }),
      ),
    counted: () =>
      log.entries.flatMap(({ event }) =>
        event.type === 'record.counted' ? [{ entry: event.entry, repairs: event.repairs ?? 0 }] : [],
      ),
    figures: () => log.entries.flatMap(({ event }) => (event.type === 'record.figure' ? [event] : [])),
    retry: () => note(log.retry()),
    dispose: () => actor.stop(),
  };
}
