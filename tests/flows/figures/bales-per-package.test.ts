import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balesPerPackage, type TwinePackage } from '../../../flows/figures/bales-per-package.ts';

const known = (twine: TwinePackage, perStringFt: number, strings?: number): number => {
  const answer = balesPerPackage(twine, perStringFt, strings);
  if (answer.kind !== 'known') throw new Error('expected a known count');
  return answer.bales.value;
};
const labelFt = fc.integer({ min: 1000, max: 20_000 });
const perStringFt = fc.double({ min: 3, max: 20, noNaN: true });

describe('bales from a package', () => {
  test('without knowing what the label means there are two answers, and the question', () => {
    fc.assert(
      fc.property(labelFt, perStringFt, fc.integer({ min: 2, max: 12 }), (label, ft, balls) => {
        const twine = { labelFt: label, balls };
        const answer = balesPerPackage({ ...twine, labelledFor: 'not known' }, ft);
        if (answer.kind !== 'ask what the label means') throw new Error('expected the question');
        expect(answer.ifEachBall.value).toBe(known({ ...twine, labelledFor: 'each ball' }, ft));
        expect(answer.ifWholePackage.value).toBe(known({ ...twine, labelledFor: 'whole package' }, ft));
        expect(answer.ifEachBall.value).toBeGreaterThanOrEqual(balls * answer.ifWholePackage.value);
      }),
    );
  });

  test('the bales counted fit on the twine and one more does not', () => {
    fc.assert(
      fc.property(labelFt, perStringFt, (label, ft) => {
        const bales = known({ labelFt: label, labelledFor: 'each ball', balls: 2 }, ft);
        expect(bales * ft).toBeLessThanOrEqual(label * (1 + 1e-8));
        expect((bales + 1) * ft).toBeGreaterThan(label);
      }),
    );
  });

  test('a ball too many for an even chain ties nothing', () => {
    const twine = { labelFt: 4500, labelledFor: 'each ball' as const };
    expect(known({ ...twine, balls: 3 }, 9)).toBe(known({ ...twine, balls: 2 }, 9));
    expect(known({ ...twine, balls: 4 }, 9)).toBe(1000);
  });

  test('two strings cannot run off one ball', () => {
    expect(() => balesPerPackage({ labelFt: 9000, labelledFor: 'each ball', balls: 1 }, 9)).toThrow(
      '2 strings need at least 2 balls, not 1. Say the number of balls again.',
    );
    expect(() => known({ labelFt: 9, labelledFor: 'each ball', balls: 2 }, 9)).toThrow('length on the label');
    expect(() => known({ labelFt: 9000, labelledFor: 'each ball', balls: 2 }, 90)).toThrow('twine a string');
  });
});
