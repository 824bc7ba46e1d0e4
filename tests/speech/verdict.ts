/** What came of a trial. */
import { riskOf } from '../../grammar/lexicon.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';
import type { Trial } from './trials.ts';

type Said = Pick<Trial, 'text' | 'expecting'>;

/**
 * Right: just what was said, or other talk refused. Refused: asked again. Voided: something that only voids a lockout
 * was taken from talk that was not that; a nuisance, never a danger, so the grammar takes it lightly. Wrong: anything
 * else was acted upon that was not said.
 */
export const verdicts = ['right', 'refused', 'voided', 'wrong'] as const;
export type Verdict = (typeof verdicts)[number];

/** @param understood what was made of each stretch of sound in the trial */
export function verdictOn({ text, expecting }: Said, understood: readonly Understanding[]): Verdict {
  const meant = actedUpon(understand(text, expecting));
  const taken = understood.filter((each) => each.outcome === 'understood');
  if (taken.length === 0) return meant === undefined ? 'right' : 'refused';
  const [first] = taken;
  if (taken.length === 1 && first && actedUpon(first) === meant) return 'right';
  const mistaken = taken.filter((each) => actedUpon(each) !== meant);
  return mistaken.every(({ meaning }) => riskOf(meaning) === 'void') ? 'voided' : 'wrong';
}

/** All that the app does depends on, as one text to compare; undefined where it asks again. */
function actedUpon(understanding: Understanding): string | undefined {
  if (understanding.outcome !== 'understood') return undefined;
  return JSON.stringify([understanding.meaning, understanding.slots]);
}

/** Whether a phrase that clears a step of the lockout was taken from anything but a phrase of its own meaning. */
export function hasFalseConfirmation(
  { text, expecting }: Said,
  understood: readonly Understanding[],
): boolean {
  const meant = understand(text, expecting);
  const meaning = meant.outcome === 'understood' ? meant.meaning : undefined;
  return understood.some(
    (each) => each.outcome === 'understood' && riskOf(each.meaning) === 'confirm' && each.meaning !== meaning,
  );
}
