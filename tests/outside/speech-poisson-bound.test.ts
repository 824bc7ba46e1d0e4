import { describe, expect, it } from 'vitest';
import { mostExpected } from '../speech/poisson-bound.ts';

describe('the most that a count may really come to', () => {
  // Garwood's table, Biometrika 28, 1936, as reprinted in Pearson and Hartley's Biometrika Tables, table 40; from memory.
  it.each([
    [0, 3.689],
    [1, 5.572],
    [5, 11.668],
    [10, 18.39],
  ])('is, for %i, %f', (events, upper) => {
    expect(mostExpected(events)).toBeCloseTo(upper, 2);
  });

  it('takes counts only', () => {
    expect(() => mostExpected(-1)).toThrow(RangeError);
    expect(() => mostExpected(0.5)).toThrow(RangeError);
  });
});
