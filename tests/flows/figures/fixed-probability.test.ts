import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceFixed } from '../../../flows/figures/fixed-probability.ts';

const belief = fc.record({
  prior: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
  fixedRate: fc.double({ min: 0, max: 0.02, noNaN: true }),
  faultyRate: fc.double({ min: 0.03, max: 0.99, noNaN: true }),
});

test('starts at what was believed and rises with every clean tie', () => {
  fc.assert(
    fc.property(belief, fc.integer({ min: 0, max: 200 }), (b, n) => {
      expect(chanceFixed(b, 0)).toBeCloseTo(b.prior, 12);
      expect(chanceFixed(b, n + 1)).toBeGreaterThanOrEqual(chanceFixed(b, n));
    }),
  );
});

test('two runs in a row are one long run', () => {
  fc.assert(
    fc.property(belief, fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 }), (b, n, m) => {
      const afterFirst = { ...b, prior: chanceFixed(b, n) };
      expect(chanceFixed(afterFirst, m)).toBeCloseTo(chanceFixed(b, n + m), 9);
    }),
  );
});

test('certainty is not moved, and long runs do not drown in rounding', () => {
  const b = { prior: 0.5, fixedRate: 0.5, faultyRate: 0.9 };
  expect(chanceFixed({ ...b, prior: 0 }, 100)).toBe(0);
  expect(chanceFixed({ ...b, prior: 0 }, 100_000)).toBe(0);
  expect(chanceFixed({ ...b, prior: 1 }, 100)).toBe(1);
  expect(chanceFixed(b, 100_000)).toBe(1);
  expect(chanceFixed({ ...b, fixedRate: 0.9, faultyRate: 0.5, prior: 0.9 }, 100_000)).toBe(0);
});

test('impossible beliefs are refused', () => {
  const b = { prior: 0.5, fixedRate: 0.005, faultyRate: 0.1 };
  expect(() => chanceFixed({ ...b, prior: 70 }, 10)).toThrow('chance that the repair was right');
  expect(() => chanceFixed({ ...b, faultyRate: 1 }, 10)).toThrow('miss rate of the faulty knotter');
  expect(() => chanceFixed(b, -1)).toThrow('number of clean ties');
});
