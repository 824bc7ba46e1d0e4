import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baleMissRate, knotMissRate, missRateInterval } from '../../../flows/figures/miss-rate.ts';
import { ImpossibleFigure } from '../../../flows/figures/quantity.ts';

const rate = fc.double({ min: 0, max: 0.999, noNaN: true });
const strings = fc.integer({ min: 1, max: 3 });

describe('miss rate', () => {
  test('knot rate and bale rate are each other inverted', () => {
    fc.assert(
      fc.property(rate, strings, (p, s) => {
        expect(knotMissRate(baleMissRate(p, s), s)).toBeCloseTo(p, 10);
      }),
    );
  });

  test('a bale misses at least as often as one knot and no oftener than all its knots added', () => {
    fc.assert(
      fc.property(rate, strings, (p, s) => {
        expect(baleMissRate(p, s)).toBeGreaterThanOrEqual(p * (1 - 1e-12));
        expect(baleMissRate(p, s)).toBeLessThanOrEqual(s * p * (1 + 1e-12));
      }),
    );
  });

  test('a knotter that never or always misses makes the bale do the same', () => {
    expect(baleMissRate(0)).toBe(0);
    expect(baleMissRate(1)).toBe(1);
    expect(knotMissRate(1)).toBe(1);
  });

  test('a miss more in as many ties never lowers the interval', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 2000 }), fc.nat(), (trials, seed) => {
        const misses = seed % trials;
        const fewer = missRateInterval(misses, trials, 0.95);
        const more = missRateInterval(misses + 1, trials, 0.95);
        expect(more.lower).toBeGreaterThan(fewer.lower);
        expect(more.upper).toBeGreaterThan(fewer.upper);
      }),
    );
  });

  test('impossible rates are refused in plain speech', () => {
    expect(() => baleMissRate(1.5)).toThrow(
      new ImpossibleFigure('The miss rate of 1.5 is outside 0 to 1. Say the miss rate again.'),
    );
    expect(() => baleMissRate(-0.1)).toThrow('The miss rate of minus 0.1 is outside 0 to 1.');
    expect(() => baleMissRate(0.1, 4)).toThrow(ImpossibleFigure);
  });
});
