import { familyById } from '../families/all.ts';
import { SOMETHING_ELSE } from '../families/family.ts';
import type { Answer, QuestionId } from './answer.ts';
import { beliefsAfter, type Hypothesis, leadingFamily, likelihood } from './beliefs.ts';

/** A cause that checks or repairs have cleared. */
export interface Exclusion extends Hypothesis {
  /** The answers that speak against it, in the order they were given. */
  readonly by: readonly QuestionId[];
}

/** A cause this much less likely to give what was found than something else counts as excluded. Expert estimate. */
const EXCLUDED_BELOW = 1 / 3;

/**
 * What a hand-over can tell the next person not to look for again: the causes of the leading family that the checks
 * and repairs speak against. How rare a cause is plays no part, and neither does the evidence of the string, which is
 * the same for every cause of a family.
 */
export function excluded(answers: readonly Answer[]): readonly Exclusion[] {
  const family = leadingFamily(beliefsAfter(answers));
  return Object.keys(familyById(family).causes).flatMap((cause) => {
    const ratios = answers.map((answer) => ({
      question: answer.question,
      ratio: likelihood(answer, { family, cause }) / likelihood(answer, { family, cause: SOMETHING_ELSE }),
    }));
    const against = ratios.filter(({ ratio }) => ratio < 1);
    return ratios.reduce((product, { ratio }) => product * ratio, 1) < EXCLUDED_BELOW
      ? [{ family, cause, by: against.map(({ question }) => question) }]
      : [];
  });
}
