import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../flows/diagnosis/answer.ts';
import { beliefsAfter, leadingFamily } from '../../../flows/diagnosis/beliefs.ts';
import { excluded } from '../../../flows/diagnosis/excluded.ts';
import { SOMETHING_ELSE } from '../../../flows/families/family.ts';
import { anyJob } from './any-answer.ts';

const HELD: readonly Answer[] = [
  { question: 'symptom', said: 'symptom.heldStrandLost' },
  { question: 'evidence.knotPlace', said: 'knot.frontEnd' },
];

describe('what a hand-over says was excluded', () => {
  test('is nothing before anything was checked', () => {
    expect(excluded(HELD)).toEqual([]);
  });

  test('is the cause a check cleared, with the check', () => {
    const clean: Answer = { question: 'check.heldStrandLost.debris', said: 'finding.clean' };
    expect(excluded([...HELD, clean])).toEqual([
      { family: 'heldStrandLost', cause: 'debrisPacked', by: ['check.heldStrandLost.debris'] },
    ]);
  });

  test('is the cause that was put right in vain', () => {
    const repaired: Answer = { question: 'repair.heldStrandLost.holderLoose', said: 'tie.missed' };
    expect(excluded([...HELD, repaired])).toEqual([
      { family: 'heldStrandLost', cause: 'holderLoose', by: ['repair.heldStrandLost.holderLoose'] },
    ]);
  });

  test('is not what nobody was sure of, nor what was found', () => {
    for (const said of ['notSure', 'cannotSee', 'skip', 'finding.packed'] as const) {
      expect(excluded([...HELD, { question: 'check.heldStrandLost.debris', said }])).toEqual([]);
    }
  });

  test('names causes of the leading family only, each with an answer that was given, and never something else', () => {
    fc.assert(
      fc.property(anyJob, (answers) => {
        const given = new Set(answers.map(({ question }) => question));
        for (const { family, cause, by } of excluded(answers)) {
          expect(family).toBe(leadingFamily(beliefsAfter(answers)));
          expect(cause).not.toBe(SOMETHING_ELSE);
          expect(by.length).toBeGreaterThan(0);
          expect(by.every((question) => given.has(question))).toBe(true);
        }
      }),
    );
  });
});
