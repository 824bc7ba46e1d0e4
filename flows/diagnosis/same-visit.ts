import { familyById } from '../families/all.ts';
import type { Remedy } from '../families/family.ts';
import type { Answer, QuestionId } from './answer.ts';
import { beliefsAfter, type Hypothesis, REMEDY_FAILS } from './beliefs.ts';
import { LOCKOUT_MINUTES, PROOF_MINUTES } from './costs.ts';
import { type Estimates, SEED_ESTIMATES } from './estimates.ts';
import { openCauses } from './search.ts';

/** Minutes up to which a remedy may ride along with another. Expert estimate. */
const SHORT_MINUTES = 10;
/** More would leave nobody knowing what helped; "change one thing at a time" is common practice. */
const MOST_ALONG = 1;

/**
 * Causes worth putting right in the same visit as the named one, before ties are counted: short work without new
 * parts, likely enough that a second proof and lockout saved outweigh the minutes it may be in vain. Faults come in
 * pairs, and one proof can serve both.
 * @param named the cause being put right; it is never among the result
 */
export function sameVisit(
  answers: readonly Answer[],
  named: Hypothesis,
  estimates: Estimates = SEED_ESTIMATES,
): readonly Hypothesis[] {
  const asked = new Set<QuestionId>(answers.map(({ question }) => question));
  const reach = remedyOf(named)?.reach;
  return openCauses(beliefsAfter(answers, estimates), asked)
    .filter(({ family, cause }) => family !== named.family || cause !== named.cause)
    .filter(({ probability, ...cause }) => {
      const remedy = remedyOf(cause);
      if (!remedy || !ridesAlong(remedy) || (reach === 'safeStop' && remedy.reach === 'lockout'))
        return false;
      const chance = probability * (1 - REMEDY_FAILS);
      return chance * (PROOF_MINUTES + LOCKOUT_MINUTES) > (1 - chance) * remedy.minutes;
    })
    .sort((a, b) => b.probability - a.probability)
    .slice(0, MOST_ALONG)
    .map(({ family, cause }) => ({ family, cause }));
}

function ridesAlong({ refer, parts, minutes }: Remedy): boolean {
  return refer === undefined && parts === undefined && minutes <= SHORT_MINUTES;
}

function remedyOf({ family, cause }: Hypothesis): Remedy | undefined {
  return familyById(family).causes[cause]?.remedy;
}
