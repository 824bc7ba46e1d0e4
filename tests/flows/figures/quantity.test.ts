import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ImpossibleFigure, possible, type Quantity } from '../../../flows/figures/quantity.ts';

const LENGTH: Quantity = { name: 'bale length', unit: 'inches', low: 12, high: 60 };
const COUNT: Quantity = { name: 'number of bales', unit: '', low: 0, high: 1000, whole: true };

function refusal(quantity: Quantity, value: number): string {
  try {
    possible(quantity, value);
  } catch (error) {
    if (error instanceof ImpossibleFigure) return error.message;
    throw error;
  }
  throw new Error(`${value} was let through`);
}

describe('a possible quantity', () => {
  test('comes back as it went in', () => {
    fc.assert(
      fc.property(fc.double({ min: 12, max: 60, noNaN: true }), (value) => {
        expect(possible(LENGTH, value)).toBe(value);
      }),
    );
  });

  test('everything else is refused in words a voice can read', () => {
    const outside = fc.oneof(
      fc.double({ max: 12, maxExcluded: true, noNaN: true }),
      fc.double({ min: 60, minExcluded: true, noNaN: true }),
    );
    fc.assert(
      fc.property(outside, (value) => {
        const words = refusal(LENGTH, value);
        expect(words).toMatch(
          /^The bale length of .+ inches is outside 12 to 60 inches\. Say the bale length again\.$/,
        );
        expect(words).not.toMatch(/e[+-]?\d|Infinity|NaN|undefined/);
      }),
    );
  });

  test('says exactly what is wrong', () => {
    expect(refusal(LENGTH, 400)).toBe(
      'The bale length of 400 inches is outside 12 to 60 inches. Say the bale length again.',
    );
    expect(refusal(LENGTH, -0.1 - 0.2)).toContain('of minus 0.3 inches');
    expect(refusal(LENGTH, Number.POSITIVE_INFINITY)).toContain('of more than a billion inches');
    expect(refusal({ ...LENGTH, low: 1 }, 1e-9)).toContain('of less than a millionth inches');
    expect(refusal(LENGTH, Number.NaN)).toBe('The bale length is not a number. Say the bale length again.');
    expect(refusal(COUNT, 2.5)).toBe(
      'The number of bales must be a whole number, not 2.5. Say the number of bales again.',
    );
  });

  test('the refusal is a RangeError, so that it is never mistaken for a fault of the program', () => {
    expect(() => possible(COUNT, -1)).toThrow(RangeError);
  });
});
