import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceMatrix, roundMantissa } from '../../../audio/command-model/scoring-network.ts';

describe('the difference matrix', () => {
  // Sphinx's feature type 1s_c_d_dd: d(t) = c(t+2) - c(t-2), dd(t) = d(t+1) - d(t-1).
  it('makes cepstra, differences and differences of differences', () => {
    const frames = [5, 1, 4, 2, 8, 3, 9];
    const c = (t: number) => frames[t + 3] ?? 0;
    const d = (t: number) => c(t + 2) - c(t - 2);
    const matrix = differenceMatrix(1);
    const made = [0, 1, 2].map((row) =>
      frames.reduce((sum, x, i) => sum + x * (matrix[row * 7 + i] ?? 0), 0),
    );
    expect(made).toEqual([c(0), d(0), d(1) - d(-1)]);
  });
});

describe('rounding a mantissa', () => {
  it('moves a number by half a step at most, and leaves few bits', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), fc.boolean(), (size, negative) => {
        const value = negative ? -size : size;
        const rounded = roundMantissa(value, 9);
        expect(Math.abs(rounded - value)).toBeLessThanOrEqual(Math.abs(value) * 2 ** -10 * 1.0001);
        expect(roundMantissa(rounded, 9)).toBe(rounded);
        expect(Math.fround(rounded)).toBe(rounded);
      }),
    );
  });
});
