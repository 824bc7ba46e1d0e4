import { createActor } from 'xstate';
import type { JobEvent } from '../../flows/heard.ts';
import { jobMachine } from '../../flows/job.ts';
import { type JobSnapshot, promptOf } from '../../flows/prompt.ts';
import { isRecordEvent, type LogEntry } from './log-entry.ts';

export interface Replayed {
  readonly snapshot: JobSnapshot;
  /**
   * The first entry that answered another question than the replay was asking. Then the log was written by an
   * app with other charts, and what is worked out from it may differ from what was said at the time.
   */
  readonly departsAtSeq?: number;
}

/** One event of a job, between what the job was before it and after it. */
export interface RetracedStep {
  readonly entry: LogEntry;
  readonly event: JobEvent;
  readonly before: JobSnapshot;
  readonly after: JobSnapshot;
}

/**
 * Works a job out again from its log, by the events alone.
 *
 * The lockout of a replayed snapshot is history, not the present: whoever resumes a job sends it
 * `{ type: 'void.restarted' }` before anything else.
 * @param entries in order of `seq`
 */
export function replay(entries: readonly LogEntry[]): Replayed {
  const steps = [...retrace(entries)];
  const snapshot = steps.at(-1)?.after ?? freshJob();
  const departure = steps.find(({ entry, before }) => promptOf(before).state !== entry.promptState);
  return departure ? { snapshot, departsAtSeq: departure.entry.seq } : { snapshot };
}

/** The job as it was after every event of its log, in order. @param entries in order of `seq` */
export function* retrace(entries: readonly LogEntry[]): Generator<RetracedStep, void> {
  const actor = createActor(jobMachine).start();
  for (const entry of entries) {
    const { event } = entry;
    if (isRecordEvent(event)) continue;
    const before = actor.getSnapshot();
    actor.send(event);
    yield { entry, event, before, after: actor.getSnapshot() };
  }
  actor.stop();
}

function freshJob(): JobSnapshot {
  return createActor(jobMachine).start().getSnapshot();
}
