import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../flows/diagnosis/answer.ts';
import { nextStep } from '../../../flows/diagnosis/next-step.ts';
import { sameVisit } from '../../../flows/diagnosis/same-visit.ts';
import { familyById } from '../../../flows/families/all.ts';
import { anyJob } from './any-answer.ts';

/** Packed debris and a holder that slips: both are short work under one lockout. */
const PAIR: readonly Answer[] = [
  { question: 'symptom', said: 'symptom.heldStrandLost' },
  { question: 'evidence.knotPlace', said: 'knot.frontEnd' },
  { question: 'evidence.whichKnotter', said: 'which.left' },
  { question: 'check.heldStrandLost.debris', said: 'finding.packed' },
  { question: 'check.heldStrandLost.holderPull', said: 'finding.slipsEasily' },
];
const LOOSE = { family: 'heldStrandLost', cause: 'holderLoose' } as const;
const PACKED = { family: 'heldStrandLost', cause: 'debrisPacked' } as const;

describe('a second repair in the same visit', () => {
  test('is the other of a likely pair, when it is short', () => {
    expect(sameVisit(PAIR, PACKED)).toEqual([LOOSE]);
  });

  test('is none where the minutes it may cost in vain outweigh the proof it may save', () => {
    const alike: readonly Answer[] = PAIR.filter(({ question }) => !question.startsWith('check.'));
    expect(sameVisit(alike, PACKED)).toEqual([]);
  });

  test('is none where nothing else is likely', () => {
    const alone = PAIR.filter(({ said }) => said !== 'finding.packed');
    const cleaned: Answer = { question: 'check.heldStrandLost.debris', said: 'finding.clean' };
    expect(sameVisit([...alone, cleaned], LOOSE)).toEqual([]);
  });

  test('is none where it needs a new part', () => {
    const twoFaults: readonly Answer[] = [
      { question: 'symptom', said: 'symptom.twineFeedLost' },
      { question: 'evidence.knotPlace', said: 'knot.oneStrand' },
      { question: 'check.twineFeedLost.splice', said: 'finding.spliceLumpy' },
      { question: 'check.twineFeedLost.boxLook', said: 'finding.ranOut' },
    ];
    expect(sameVisit(twoFaults, { family: 'twineFeedLost', cause: 'ballRanOut' })).toEqual([
      { family: 'twineFeedLost', cause: 'spliceLumpy' },
    ]);
    expect(sameVisit(twoFaults, { family: 'twineFeedLost', cause: 'spliceLumpy' })).toEqual([]);
  });

  test('is none where the first needs no lockout and the second would', () => {
    expect(sameVisit(PAIR, { family: 'heldStrandLost', cause: 'balesTooDense' })).toEqual([]);
  });

  test('is never the named cause, one put right already, one with new parts, or one for the dealer', () => {
    fc.assert(
      fc.property(anyJob, (answers) => {
        const step = nextStep([{ question: 'symptom', said: 'notSure' }, ...answers], true);
        if (step.kind !== 'name') return;
        const along = sameVisit(answers, step);
        expect(along.length).toBeLessThanOrEqual(1);
        for (const { family, cause } of along) {
          const remedy = familyById(family).causes[cause]?.remedy;
          expect({ family, cause }).not.toEqual({ family: step.family, cause: step.cause });
          expect(remedy?.parts).toBeUndefined();
          expect(remedy?.refer).toBeUndefined();
          expect(answers.some(({ question }) => question === `repair.${family}.${cause}`)).toBe(false);
        }
      }),
    );
  });
});
