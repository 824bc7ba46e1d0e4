import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareWithTarget, TARGET_MISS_RATE } from '../../../flows/figures/target-rate.ts';

test('a verdict needs the whole interval on one side of the target', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 3000 }), fc.nat({ max: 60 }), (ties, some) => {
      const { verdict, interval } = compareWithTarget(Math.min(some, ties), ties, 0.95);
      expect(verdict === 'better than the target').toBe(interval.upper < TARGET_MISS_RATE);
      expect(verdict === 'worse than the target').toBe(interval.lower > TARGET_MISS_RATE);
    }),
  );
});

test('all three verdicts can be reached', () => {
  expect(compareWithTarget(0, 2000, 0.95).verdict).toBe('better than the target');
  expect(compareWithTarget(6, 60, 0.95).verdict).toBe('worse than the target');
  expect(compareWithTarget(0, 60, 0.95).verdict).toBe('too few ties to tell');
});

test('counts are refused in the words of the trade', () => {
  expect(() => compareWithTarget(61, 60, 0.95)).toThrow('The number of misses of 61 is outside 0 to 60.');
});
