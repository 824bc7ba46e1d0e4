import { createActor } from 'xstate';
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

/**
 * Works a job out again from its log, by the events alone.
 *
 * The lockout of a replayed snapshot is history, not the present: whoever resumes a job sends it
 * `{ type: 'void.restarted' }` before anything else.
 * @param entries in order of `seq`
 */
export function replay(entries: readonly LogEntry[]): Replayed {
  const actor = createActor(jobMachine).start();
  let departsAtSeq: number | undefined;
  for (const { seq, event, promptState } of entries) {
    if (isRecordEvent(event)) continue;
    if (departsAtSeq === undefined && promptOf(actor.getSnapshot()).state !== promptState) departsAtSeq = seq;
    actor.send(event);
  }
  const snapshot = actor.getSnapshot();
  actor.stop();
  return departsAtSeq === undefined ? { snapshot } : { snapshot, departsAtSeq };
}
