import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceOfAtLeast } from '../../../flows/figures/binomial-tail.ts';

test('the tail is the sum of its terms, built one trial at a time', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      (trials, p) => {
        let exactly = [1];
        for (let trial = 0; trial < trials; trial++) {
          const before = exactly;
          exactly = Array.from(
            { length: trial + 2 },
            (_, k) => (before[k] ?? 0) * (1 - p) + (before[k - 1] ?? 0) * p,
          );
        }
        for (let events = 0; events <= trials; events++) {
          const tail = exactly.slice(events).reduce((sum, term) => sum + term, 0);
          expect(chanceOfAtLeast(events, trials, p)).toBeCloseTo(tail, 11);
        }
      },
    ),
  );
});
