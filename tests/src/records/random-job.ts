import fc from 'fast-check';
import { createActor } from 'xstate';
import { type HeardEvent, type JobEvent, SYSTEM_VOIDS } from '../../../flows/heard.ts';
import { jobMachine } from '../../../flows/job.ts';
import { type JobSnapshot, promptOf } from '../../../flows/prompt.ts';
import type { ExpectedValue } from '../../../grammar/expecting.ts';
import { type MeaningId, VOID_MEANINGS } from '../../../grammar/lexicon.ts';
import type { EntryDraft } from '../../../src/records/log-entry.ts';

/** One step of a job as the session would log it. */
export interface WalkedStep {
  readonly draft: EntryDraft;
  readonly after: JobSnapshot;
}

/** A random job: what is asked for mostly, and now and then anything else that can happen. */
export const anyWalk: fc.Arbitrary<readonly WalkedStep[]> = fc
  .array(fc.nat(9_999), { maxLength: 120 })
  .map(walk);

/** Understood everywhere, and the job goes on from them. */
const UNIVERSAL: readonly JobEvent[] = (['goBack', 'skip', 'notSure', 'why'] as const).map((meaning) =>
  said(meaning),
);

/** What ends a job, or takes its lockout away. */
const ENDS: readonly JobEvent[] = [
  ...(['stop', 'handOver'] as const).map((meaning) => said(meaning)),
  ...VOID_MEANINGS.map((meaning) => said(meaning)),
  ...SYSTEM_VOIDS.map((type) => ({ type })),
];

/** Two steps in thirty-two say a universal word and one an end, so that most walks get deep into the job. */
export function walk(choices: readonly number[]): readonly WalkedStep[] {
  const actor = createActor(jobMachine).start();
  return choices.map((choice) => {
    const { state, expecting } = promptOf(actor.getSnapshot());
    const asked = [
      ...expecting.meanings.map((meaning) => said(meaning)),
      ...(expecting.value ? values(expecting.value) : []),
    ];
    const pool = poolFor(choice, asked);
    const event = pool[Math.floor(choice / 16) % pool.length];
    if (!event) throw new Error('The pool of events is never empty.');
    actor.send(event);
    return { draft: { event, promptState: state }, after: actor.getSnapshot() };
  });
}

function poolFor(choice: number, asked: readonly JobEvent[]): readonly JobEvent[] {
  if (choice % 16 === 0) return UNIVERSAL;
  return asked.length === 0 || choice % 32 === 17 ? ENDS : asked;
}

/** Walks a job by the first answer of every question until it ends: through lockout, remedy and proof. */
export function straightWalk(steps: number): readonly WalkedStep[] {
  return walk(Array.from({ length: steps }, () => 1));
}

export function said(type: MeaningId, slots: HeardEvent['slots'] = {}): HeardEvent {
  return { type, slots, channel: { by: 'voice', margin: 0.9, snrDb: 25 } };
}

function values(value: ExpectedValue): HeardEvent[] {
  switch (value.kind) {
    case 'missCount':
      return [[2, 10] as const, [0, 5] as const].map(([misses, bales]) =>
        said('value.missRate', { missCount: { misses, bales } }),
      );
    case 'day':
      return [said('value.day', { day: { month: 6, day: 10 } })];
    case 'count':
      return [said('value.count', { count: 12 })];
    case 'measurement': {
      const unit = {
        length: 'inch',
        force: 'poundForce',
        mass: 'pound',
        rotation: 'turn',
        runnage: 'footPerPound',
      } as const;
      return [0.5, 30, 50, 900].map((amount) =>
        said('value.measured', { measurement: { amount, unit: unit[value.dimension] } }),
      );
    }
  }
}
