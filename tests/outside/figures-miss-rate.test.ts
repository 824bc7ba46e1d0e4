import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import { describe, expect, test } from 'vitest';
import {
  chanceOfCleanRun,
  cleanTiesNeeded,
  tiesNeededForgivingOneMiss,
  upperBoundAfterClean,
} from '../../flows/figures/clean-ties.ts';
import { baleMissRate, missRateInterval } from '../../flows/figures/miss-rate.ts';

describe('exact interval of the miss rate', () => {
  // Source: @stdlib/stats-base-dists-beta-quantile, an independent implementation of the beta quantile.
  test.each([
    [1, 20],
    [6, 60],
    [3, 100],
    [50, 100],
    [99, 100],
    [12, 400],
    [7, 1000],
    [5, 100_000],
    [5000, 100_000],
  ])('%i missed of %i agrees with a reference library', (misses, trials) => {
    for (const confidence of [0.5, 0.8, 0.9, 0.95, 0.99, 0.999, 0.9999]) {
      const { lower, upper } = missRateInterval(misses, trials, confidence);
      const tail = (1 - confidence) / 2;
      expect(lower / betaQuantile(tail, misses, trials - misses + 1)).toBeCloseTo(1, 9);
      expect(upper / betaQuantile(1 - tail, misses + 1, trials - misses)).toBeCloseTo(1, 9);
    }
  });

  // Source: the definition in Clopper and Pearson, Biometrika 26(4), 1934, 404-413, with the binomial distribution
  // of @stdlib/stats-base-dists-binomial-cdf: at each end the tail beyond the count is exactly (1 - c) / 2.
  test.each([
    [1, 20],
    [6, 60],
    [12, 400],
    [7, 1000],
  ])('%i of %i leaves 2.5 %% outside each end', (misses, trials) => {
    const { lower, upper } = missRateInterval(misses, trials, 0.95);
    expect(1 - binomialCdf(misses - 1, trials, lower)).toBeCloseTo(0.025, 9);
    expect(binomialCdf(misses, trials, upper)).toBeCloseTo(0.025, 9);
  });

  // Source: check values recomputed from the Clopper-Pearson formula outside this project, rounded as printed.
  test.each([
    [0, 29, 0, 11.9],
    [0, 100, 0, 3.62],
    [1, 100, 0.025, 5.45],
    [2, 100, 0.243, 7.04],
    [3, 100, 0.623, 8.52],
    [7, 1000, 0.282, 1.437],
    [5, 200, 0.817, 5.74],
    [6, 60, 3.76, 20.5],
    [12, 400, 1.56, 5.18],
    [1, 20, 0.127, 24.9],
  ])('%i of %i is %f to %f per cent', (misses, trials, lowerPercent, upperPercent) => {
    const { lower, upper } = missRateInterval(misses, trials, 0.95);
    const asPrinted = (value: number, like: number) => value.toFixed(String(like).split('.')[1]?.length ?? 0);
    expect(asPrinted(100 * lower, lowerPercent)).toBe(String(lowerPercent));
    expect(asPrinted(100 * upper, upperPercent)).toBe(String(upperPercent));
  });

  // Source: 1 - (1 - p)^2, recomputed from the formula.
  test('0.7 % of knots missed is 1.395 % of two-string bales', () => {
    expect((100 * baleMissRate(0.007)).toFixed(3)).toBe('1.395');
  });
});

describe('what a clean run proves', () => {
  // Source: Jovanovic and Levy, "A Look at the Rule of Three", The American Statistician 51(2), 1997, 137-139:
  // 3/n bounds the exact 95 % limit from above and is close to it for n above 30.
  test('the rule of three holds from above and closes in', () => {
    for (const n of [31, 59, 100, 299, 1000, 10_000]) {
      const exact = upperBoundAfterClean(n, 0.95);
      expect(exact).toBeLessThan(3 / n);
      expect(exact).toBeGreaterThan((3 / n) * (1 - 2 / n) * 0.998);
    }
  });

  // Source: the success-run table of acceptance sampling (0 of 29, 59, 299 show 10, 5 and 1 % at 95 % one-sided),
  // which is 1 - 0.05^(1/n) at its smallest whole n.
  test.each([
    [29, 0.1, '9.81'],
    [59, 0.05, '4.95'],
    [299, 0.01, '1.00'],
  ])('none missed of %i is below %f, and one tie fewer is not', (n, missRate, percent) => {
    expect(upperBoundAfterClean(n, 0.95)).toBeLessThan(missRate);
    expect(upperBoundAfterClean(n - 1, 0.95)).toBeGreaterThan(missRate);
    expect((100 * upperBoundAfterClean(n, 0.95)).toFixed(2)).toBe(percent);
  });

  // Source: recomputed from the formula 1 - 0.05^(1/n).
  test('none missed of 100 and of 300', () => {
    expect((100 * upperBoundAfterClean(100, 0.95)).toFixed(2)).toBe('2.95');
    expect((100 * upperBoundAfterClean(300, 0.95)).toFixed(3)).toBe('0.994');
  });

  // Source: recomputed from n = ceil(ln(1 - c) / ln(1 - p)). At 0.90 and 90 % the exact answer is one tie,
  // because 0.1 to the first is 0.1; a table made with plain floating point prints two.
  test.each([
    [0.9, 1, 1, 2, 2],
    [0.5, 3, 4, 5, 7],
    [0.333, 4, 6, 8, 12],
    [0.25, 6, 9, 11, 17],
    [0.2, 8, 11, 14, 21],
    [0.1, 16, 22, 29, 44],
    [0.05, 32, 45, 59, 90],
    [0.02, 80, 114, 149, 228],
    [0.01, 161, 230, 299, 459],
    [0.005, 322, 460, 598, 919],
    [0.001, 1609, 2302, 2995, 4603],
  ])('a knotter that missed %f needs %i, %i, %i, %i good ties', (missRate, ...ties) => {
    expect([0.8, 0.9, 0.95, 0.99].map((confidence) => cleanTiesNeeded(missRate, confidence))).toEqual(ties);
  });

  // Source: recomputed from the binomial distribution, and again with @stdlib/stats-base-dists-binomial-cdf.
  test.each([
    [0.1, 46],
    [0.05, 93],
    [0.02, 236],
    [0.01, 473],
    [0.005, 947],
  ])('with one miss forgiven, %f needs %i ties', (missRate, ties) => {
    expect(tiesNeededForgivingOneMiss(missRate, 0.95)).toBe(ties);
    expect(binomialCdf(1, ties, missRate)).toBeLessThanOrEqual(0.05);
    expect(binomialCdf(1, ties - 1, missRate)).toBeGreaterThan(0.05);
  });

  // Source: 0.9^10 and 0.9^20, recomputed.
  test('ten or twenty good ties in a row prove little about a one-in-ten knotter', () => {
    expect((100 * chanceOfCleanRun(10, 0.1)).toFixed(1)).toBe('34.9');
    expect((100 * chanceOfCleanRun(20, 0.1)).toFixed(1)).toBe('12.2');
  });
});
