import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { incompleteBeta, incompleteBetaInverse, logGamma } from '../../../flows/figures/incomplete-beta.ts';

const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const shape = fc.double({ min: 1, max: 5000, noNaN: true });

describe('incomplete beta', () => {
  test('log gamma climbs by the logarithm of its argument', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (x) => {
        const scale = Math.max(1, Math.abs(logGamma(x)));
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x)) / scale).toBeLessThan(1e-13);
      }),
    );
  });

  test('is a chance that grows with x', () => {
    fc.assert(
      fc.property(chance, chance, shape, shape, (x, y, a, b) => {
        const low = incompleteBeta(Math.min(x, y), a, b);
        const high = incompleteBeta(Math.max(x, y), a, b);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1 + 1e-12);
        expect(high).toBeGreaterThanOrEqual(low - 1e-12);
      }),
    );
    expect(incompleteBeta(0, 2, 3)).toBe(0);
    expect(incompleteBeta(1, 2, 3)).toBe(1);
  });

  test('steps down in a by the closed term of the recurrence DLMF 8.17.20', () => {
    fc.assert(
      fc.property(
        chance,
        fc.double({ min: 0.5, max: 200, noNaN: true }),
        fc.double({ min: 0.5, max: 200, noNaN: true }),
        (x, a, b) => {
          const term = Math.exp(
            a * Math.log(x) + b * Math.log1p(-x) - Math.log(a) - logGamma(a) - logGamma(b) + logGamma(a + b),
          );
          expect(incompleteBeta(x, a + 1, b)).toBeCloseTo(incompleteBeta(x, a, b) - term, 11);
        },
      ),
    );
  });

  test('the inverse undoes it', () => {
    fc.assert(
      fc.property(chance, shape, shape, (p, a, b) => {
        expect(incompleteBeta(incompleteBetaInverse(p, a, b), a, b)).toBeCloseTo(p, 9);
      }),
    );
  });
});
