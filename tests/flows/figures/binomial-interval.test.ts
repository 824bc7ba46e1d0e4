import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactInterval } from '../../../flows/figures/binomial-interval.ts';
import { ImpossibleFigure } from '../../../flows/figures/quantity.ts';

const counts = fc
  .integer({ min: 1, max: 5000 })
  .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));
const confidence = fc.double({ min: 0.5, max: 0.9999, noNaN: true });

describe('exact interval', () => {
  test('holds the observed share', () => {
    fc.assert(
      fc.property(counts, confidence, ([events, trials], c) => {
        const { lower, upper } = exactInterval(events, trials, c);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(lower).toBeLessThanOrEqual(events / trials);
        expect(upper).toBeGreaterThanOrEqual(events / trials);
        expect(upper).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('widens with confidence', () => {
    fc.assert(
      fc.property(counts, confidence, confidence, ([events, trials], c, d) => {
        const narrow = exactInterval(events, trials, Math.min(c, d));
        const wide = exactInterval(events, trials, Math.max(c, d));
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
        expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper);
      }),
    );
  });

  test('counting the good ties instead of the misses mirrors the interval', () => {
    fc.assert(
      fc.property(counts, confidence, ([events, trials], c) => {
        const misses = exactInterval(events, trials, c);
        const goods = exactInterval(trials - events, trials, c);
        expect(goods.lower).toBeCloseTo(1 - misses.upper, 9);
        expect(goods.upper).toBeCloseTo(1 - misses.lower, 9);
      }),
    );
  });

  test('impossible counts are refused in plain speech', () => {
    expect(() => exactInterval(3, 2, 0.95)).toThrow(
      new ImpossibleFigure('The number of events of 3 is outside 0 to 2. Say the number of events again.'),
    );
    expect(() => exactInterval(0, 0, 0.95)).toThrow(ImpossibleFigure);
    expect(() => exactInterval(1, 10, 0.2)).toThrow(ImpossibleFigure);
  });
});
