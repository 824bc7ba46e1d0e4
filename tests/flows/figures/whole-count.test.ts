import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wholeNeeded, wholeThatFit } from '../../../flows/figures/whole-count.ts';

test('rounding noise round a whole number is not a missing or an extra bale', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1_000_000 }),
      fc.double({ min: -1e-12, max: 1e-12, noNaN: true }),
      (n, noise) => {
        expect(wholeThatFit(n * (1 + noise))).toBe(n);
        expect(wholeNeeded(n * (1 + noise))).toBe(n);
      },
    ),
  );
});

test('a real part of a bale does not fit and still needs one', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 100_000 }),
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      (n, part) => {
        expect(wholeThatFit(n + part)).toBe(n);
        expect(wholeNeeded(n + part)).toBe(n + 1);
      },
    ),
  );
});
