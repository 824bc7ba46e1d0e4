import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { jobMachine } from '../../../flows/job.ts';
import { promptOf, safetyOf } from '../../../flows/prompt.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { replay } from '../../../src/records/replay.ts';
import { anyWalk, straightWalk, type WalkedStep } from './random-job.ts';

function logOf(steps: readonly WalkedStep[]): LogEntry[] {
  const drafts = [
    { event: { type: 'record.started' }, promptState: 'record' } as const,
    ...steps.map(({ draft }) => draft),
  ];
  return drafts.map((draft, seq) => ({ ...draft, jobId: 'a job', seq, atMs: 0, tabletId: 'a tablet' }));
}

describe('replaying a log', () => {
  it('comes to the same state and the same context as the job that wrote it', () => {
    fc.assert(
      fc.property(anyWalk, (steps) => {
        const { snapshot, departsAtSeq } = replay(structuredClone(logOf(steps)));
        const last = steps.at(-1)?.after ?? replay([]).snapshot;
        expect(snapshot.value).toEqual(last.value);
        expect(snapshot.context).toEqual(last.context);
        expect(departsAtSeq).toBeUndefined();
      }),
      { numRuns: 60 },
    );
  });

  it('gives a job that goes on, with its lockout void once it is told of the restart', () => {
    fc.assert(
      fc.property(anyWalk, (steps) => {
        const { snapshot } = replay(logOf(steps));
        const resumed = createActor(jobMachine, { snapshot }).start();
        resumed.send({ type: 'void.restarted' });
        expect(safetyOf(resumed.getSnapshot())).toBe('keepOut');
        expect(resumed.getSnapshot().context.answers).toEqual(snapshot.context.answers);
        expect(promptOf(resumed.getSnapshot()).state).toBe('job.safety.unknown.voided');
      }),
      { numRuns: 30 },
    );
  });

  it('reaches a lockout and a proof by the walks it is tried on', () => {
    const states = straightWalk(120).map(({ after }) => after);
    expect(states.some((snapshot) => snapshot.matches({ safety: 'lockedOut' }))).toBe(true);
    expect(states.some((snapshot) => snapshot.matches({ inquiry: 'closed' }))).toBe(true);
  });

  it('names the first entry that answered another question than these charts ask', () => {
    const log = logOf(straightWalk(20)).map((entry) =>
      entry.seq === 7 ? { ...entry, promptState: 'job.inquiry.somethingOlder' } : entry,
    );
    expect(replay(log).departsAtSeq).toBe(7);
  });
});
