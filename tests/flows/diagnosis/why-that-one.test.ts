import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextStep } from '../../../flows/diagnosis/next-step.ts';
import { sayWhyThatOne, whyThatOneInventory } from '../../../flows/diagnosis/why-that-one.ts';
import { sayText } from '../../../grammar/say.ts';
import { anyJob } from './any-answer.ts';

const INVENTORY = new Set(whyThatOneInventory());
const probability = fc.double({ min: 0, max: 1, noNaN: true });
const minutes = fc.double({ min: 0, max: 60, noNaN: true });

describe('why that one', () => {
  test('is said of a check by what it costs and finds', () => {
    const say = sayWhyThatOne({
      kind: 'check',
      family: 'heldStrandLost',
      check: 'debris',
      chanceOfFinding: 0.204,
      minutes: 1.5,
    });
    expect(sayText(say)).toBe(
      'It takes one and one half minutes and finds the fault twenty times in a hundred.',
    );
  });

  test('is said of a cause by how likely the answers leave it', () => {
    const say = sayWhyThatOne({
      kind: 'name',
      family: 'heldStrandLost',
      cause: 'debrisPacked',
      probability: 0.006,
    });
    expect(sayText(say)).toBe('What you found leaves it the cause once in a hundred.');
  });

  test('is one sentence from the closed set, for any check and cause', () => {
    fc.assert(
      fc.property(probability, minutes, (chance, cost) => {
        const steps = [
          { kind: 'check', family: 'cyclesWrong', check: 'brake', chanceOfFinding: chance, minutes: cost },
          { kind: 'name', family: 'cyclesWrong', cause: 'brakeWrong', probability: chance },
          { kind: 'evidence', question: 'endLook', gainBits: chance },
        ] as const;
        for (const step of steps) {
          const say = sayWhyThatOne(step);
          expect(say.filter((fragment) => !INVENTORY.has(fragment))).toEqual([]);
          expect(sayText(say).match(/\./g)).toHaveLength(1);
          expect(sayText(say)).toMatch(/^[A-Z].*\.$/);
        }
      }),
    );
  });

  test('never calls a chance none or certain', () => {
    const said = (chance: number) =>
      sayText(
        sayWhyThatOne({ kind: 'name', family: 'cyclesWrong', cause: 'brakeWrong', probability: chance }),
      );
    expect(said(0)).toContain('once in a hundred');
    expect(said(1)).toContain('ninety-nine times in a hundred');
  });

  test('is answered for every step but the first and the last', () => {
    fc.assert(
      fc.property(anyJob, fc.boolean(), (answers, live) => {
        const step = nextStep([{ question: 'symptom', said: 'notSure' }, ...answers], live);
        expect(sayWhyThatOne(step).length > 0).toBe(step.kind !== 'handOver');
      }),
    );
    expect(sayWhyThatOne({ kind: 'open' })).toEqual([]);
  });
});
