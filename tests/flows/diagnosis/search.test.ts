import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { QuestionId } from '../../../flows/diagnosis/answer.ts';
import { beliefsAfter, PRIOR_BELIEFS } from '../../../flows/diagnosis/beliefs.ts';
import { LOCKOUT_MINUTES } from '../../../flows/diagnosis/costs.ts';
import { bestCheck, bestRepair, chanceToShow, isWorthDoing } from '../../../flows/diagnosis/search.ts';
import { FAMILIES, familyById } from '../../../flows/families/all.ts';
import { SOMETHING_ELSE } from '../../../flows/families/family.ts';
import { anyJob } from './any-answer.ts';

const ALL = () => true;
const NONE: ReadonlySet<QuestionId> = new Set();

describe('what a check may show', () => {
  test('is its own cause, and a false alarm counts for nothing', () => {
    const { density } = familyById('heldStrandLost').checks;
    if (!density) throw new Error('The family under test lost its density check.');
    expect(chanceToShow(density, 'balesTooDense')).toBeCloseTo(0.95, 12);
    expect(chanceToShow(density, 'holderLoose')).toBe(0);
    expect(chanceToShow(density, SOMETHING_ELSE)).toBe(0);
  });

  test.each(
    FAMILIES.flatMap(({ id, causes, checks }) =>
      Object.keys(causes).map((cause) => ({ id, cause, checks: Object.values(checks) })),
    ),
  )('$id $cause is shown by some check', ({ id, cause, checks }) => {
    const best = Math.max(...checks.map((check) => chanceToShow(check, cause)));
    // A loose plunger and a loose linkage cannot be told from outside the guards; they go to the dealer anyway.
    expect(best).toBeGreaterThan(id === 'needlesStruck' ? 0.2 : 0.5);
  });
});

describe('the best check and the best repair', () => {
  test('never cost less without a live lockout, by the whole lockout at most', () => {
    fc.assert(
      fc.property(anyJob, (answers) => {
        const beliefs = beliefsAfter(answers);
        const live = bestRepair(beliefs, NONE, true);
        const not = bestRepair(beliefs, NONE, false);
        if (!live || !not || live.cause !== not.cause) return;
        expect(not.minutes).toBeGreaterThanOrEqual(live.minutes);
        expect(not.minutes).toBeLessThanOrEqual(live.minutes + LOCKOUT_MINUTES);
      }),
    );
  });

  test('are none where everything was asked and put right', () => {
    const everything = new Set<QuestionId>(
      FAMILIES.flatMap(({ id, causes }) =>
        Object.keys(causes).map((cause): QuestionId => `repair.${id}.${cause}`),
      ),
    );
    expect(bestCheck(PRIOR_BELIEFS, NONE, true, () => false)).toBeUndefined();
    expect(bestRepair(PRIOR_BELIEFS, everything, true)).toBeUndefined();
    expect(bestCheck(PRIOR_BELIEFS, everything, true, ALL)).toBeUndefined();
  });

  test('never put right what is for the dealer', () => {
    fc.assert(
      fc.property(anyJob, fc.boolean(), (answers, live) => {
        const repair = bestRepair(beliefsAfter(answers), NONE, live);
        if (!repair) return;
        const { family, cause } = repair.cause;
        expect(familyById(family).causes[cause]?.remedy.refer).toBeUndefined();
        expect(isWorthDoing(repair)).toBe(true);
      }),
    );
  });
});
