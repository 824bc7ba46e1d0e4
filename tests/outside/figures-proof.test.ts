import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import hypergeometricCdf from '@stdlib/stats-base-dists-hypergeometric-cdf';
import { describe, expect, test } from 'vitest';
import { chanceNotTheBallChange } from '../../flows/figures/ball-change-test.ts';
import { chanceRepairChangedNothing } from '../../flows/figures/before-after.ts';
import { chanceFixed } from '../../flows/figures/fixed-probability.ts';
import {
  judgeInSequence,
  type SequentialPlan,
  sequentialWeights,
} from '../../flows/figures/sequential-test.ts';
import { sideTest } from '../../flows/figures/side-test.ts';
import { compareWithTarget } from '../../flows/figures/target-rate.ts';

describe('before and after', () => {
  // Source: R. A. Fisher, "The Design of Experiments", 1935, chapter 2: eight cups, four with the milk first. All four
  // found by luck has 1 chance in 70; three or more, 17 in 70. Here the cups called wrongly stand for the misses after.
  test("Fisher's lady tasting tea", () => {
    const chance = (wrong: number) =>
      chanceRepairChangedNothing({ misses: 4 - wrong, ties: 4 }, { misses: wrong, ties: 4 });
    expect(chance(0)).toBeCloseTo(1 / 70, 12);
    expect(chance(1)).toBeCloseTo(17 / 70, 12);
    expect(chance(4)).toBeCloseTo(1, 12);
  });

  // Source: @stdlib/stats-base-dists-hypergeometric-cdf, an independent implementation.
  test('agrees with a reference library', () => {
    for (const [beforeMisses, beforeTies, afterMisses, afterTies] of [
      [6, 60, 0, 60],
      [6, 60, 2, 80],
      [10, 50, 3, 300],
      [40, 400, 12, 200],
      [1, 5, 1, 5],
    ] as const) {
      const ours = chanceRepairChangedNothing(
        { misses: beforeMisses, ties: beforeTies },
        { misses: afterMisses, ties: afterTies },
      );
      const theirs = hypergeometricCdf(
        afterMisses,
        beforeTies + afterTies,
        beforeMisses + afterMisses,
        afterTies,
      );
      expect(ours).toBeCloseTo(theirs, 10);
    }
  });

  // Source: recomputed from the hypergeometric distribution.
  test.each([
    [6, 60, 60, '0.0137'],
    [6, 60, 30, '0.0804'],
    [10, 50, 30, '0.0062'],
  ])('%i of %i, then none of %i: %s', (misses, ties, cleanTies, chance) => {
    expect(chanceRepairChangedNothing({ misses, ties }, { misses: 0, ties: cleanTies }).toFixed(4)).toBe(
      chance,
    );
  });
});

describe('which side, which ball', () => {
  // Source: binomial coefficients: (10 + 1) / 2^10. Twice that where the side was not named beforehand: the two-sided
  // sign test, as in Arbuthnott, Philosophical Transactions 27, 1710, 186-190.
  test('nine of ten misses on one side', () => {
    expect(sideTest(9, 1).chanceIfNamedBefore).toBeCloseTo(11 / 1024, 12);
    expect(sideTest(9, 1).chanceOnEitherSide).toBeCloseTo(22 / 1024, 12);
    expect(sideTest(9, 1).heavierSide).toBe('left');
  });

  // Source: recomputed, and @stdlib/stats-base-dists-binomial-cdf.
  test('two of four misses within three bales of a ball change, 540 bales a ball', () => {
    const chance = chanceNotTheBallChange(2, 4, 540, 3);
    expect((3 / 540).toFixed(5)).toBe('0.00556');
    expect((1e4 * chance).toFixed(2)).toBe('1.84');
    expect(chance).toBeCloseTo(1 - binomialCdf(1, 4, 3 / 540), 12);
  });
});

describe('sequential test', () => {
  const plan: SequentialPlan = { fixedRate: 0.005, faultyRate: 0.1, falseAlarm: 0.05, missedFault: 0.05 };
  const cleanRun = (length: number) => Array.from({ length }, () => true);

  // Source: Abraham Wald, "Sequential Analysis", 1947, chapter 3: bounds ln((1 - b)/a) and ln(b/(1 - a)); the figures
  // recomputed.
  test('weights of good 0.5 % against bad 10 %', () => {
    const weights = sequentialWeights(plan);
    expect(weights.faultyAt.toFixed(3)).toBe('2.944');
    expect(weights.fixedAt.toFixed(3)).toBe('-2.944');
    expect(weights.perGoodTie.toFixed(4)).toBe('-0.1003');
    expect(weights.perMiss.toFixed(3)).toBe('2.996');
    expect(judgeInSequence(plan, []).cleanTiesStillNeeded).toBe(30);
    expect(judgeInSequence(plan, cleanRun(29)).verdict).toBe('keep tying');
    expect(judgeInSequence(plan, cleanRun(30))).toMatchObject({
      verdict: 'fixed',
      tiesUsed: 30,
      cleanTiesStillNeeded: 0,
    });
    expect(judgeInSequence(plan, [false])).toMatchObject({
      verdict: 'still faulty',
      tiesUsed: 1,
      cleanTiesStillNeeded: 0,
    });
  });

  test('good 0.5 % against bad 5 %: 64 clean ties, and a miss costs 50 more', () => {
    const closer = { ...plan, faultyRate: 0.05 };
    expect(sequentialWeights(closer).perGoodTie.toFixed(4)).toBe('-0.0463');
    expect(sequentialWeights(closer).perMiss.toFixed(3)).toBe('2.303');
    expect(judgeInSequence(closer, []).cleanTiesStillNeeded).toBe(64);
    expect(judgeInSequence(closer, [false]).cleanTiesStillNeeded).toBe(64 + 50);
  });

  // Source: Wald, "Sequential Analysis", 1947, chapter 5: for a binomial test the acceptance number after m trials is
  // a straight line in m, intercept ln(b/(1-a)) / (ln(p1/p0) - ln((1-p1)/(1-p0))) and slope
  // ln((1-p0)/(1-p1)) over the same denominator.
  test('the verdict turns exactly at the acceptance line', () => {
    const { fixedRate: p0, faultyRate: p1 } = plan;
    const scale = Math.log(p1 / p0) - Math.log((1 - p1) / (1 - p0));
    const acceptanceNumber = (ties: number) =>
      Math.log(0.05 / 0.95) / scale + (ties * Math.log((1 - p0) / (1 - p1))) / scale;
    for (let ties = 1; ties <= 60; ties++) {
      expect(judgeInSequence(plan, cleanRun(ties)).verdict === 'fixed').toBe(acceptanceNumber(ties) >= 0);
    }
  });

  // Source: Wald, "Sequential Analysis", 1947, chapter 3: the chance of calling a faulty knotter fixed is at most
  // b / (1 - a), of calling a fixed one faulty at most a / (1 - b). Worked out here tie by tie, not simulated.
  test.each([plan, { ...plan, faultyRate: 0.05 }, { ...plan, falseAlarm: 0.01, missedFault: 0.1 }])(
    'wrong calls stay within the promised chances',
    (p) => {
      const wrong = (missRate: number, call: 'fixed' | 'still faulty') => {
        let open = new Map<string, { log: boolean[]; chance: number }>([['', { log: [], chance: 1 }]]);
        let total = 0;
        for (let tie = 0; tie < 300 && open.size > 0; tie++) {
          const next = new Map<string, { log: boolean[]; chance: number }>();
          for (const { log, chance } of open.values()) {
            for (const good of [true, false]) {
              const longer = [...log, good];
              const share = chance * (good ? 1 - missRate : missRate);
              const { verdict } = judgeInSequence(p, longer);
              if (verdict === call) total += share;
              if (verdict !== 'keep tying') continue;
              // Open logs with as many misses carry the same evidence, so one of them stands for all.
              const misses = `${longer.filter((tied) => !tied).length}`;
              const same = next.get(misses);
              next.set(misses, { log: longer, chance: share + (same?.chance ?? 0) });
            }
          }
          open = next;
        }
        return total;
      };
      expect(wrong(p.faultyRate, 'fixed')).toBeLessThanOrEqual(p.missedFault / (1 - p.falseAlarm));
      expect(wrong(p.fixedRate, 'still faulty')).toBeLessThanOrEqual(p.falseAlarm / (1 - p.missedFault));
      expect(wrong(p.fixedRate, 'fixed')).toBeGreaterThan(0.5);
    },
  );
});

describe('chance that it is fixed', () => {
  // Source: recomputed from Bayes' rule.
  test.each([
    [0.1, 10, '0.864'],
    [0.1, 20, '0.946'],
    [0.1, 30, '0.979'],
    [0.1, 50, '0.997'],
    [0.02, 100, '0.914'],
    [0.02, 200, '0.980'],
  ])('faulty at %f, %i clean ties: %s', (faultyRate, cleanTies, chance) => {
    expect(chanceFixed({ prior: 0.7, faultyRate, fixedRate: 0.005 }, cleanTies).toFixed(3)).toBe(chance);
  });
});

// Source: US patent 3,243,214 (1966): well-kept knotters missed less than one per cent.
test('seven missed of a thousand cannot be told from one per cent, none of a thousand can', () => {
  expect(compareWithTarget(7, 1000, 0.95).verdict).toBe('too few ties to tell');
  expect(compareWithTarget(0, 1000, 0.95).verdict).toBe('better than the target');
});
