import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chanceOfCleanRun,
  cleanTiesNeeded,
  tiesNeededForgivingOneMiss,
  upperBoundAfterClean,
} from '../../../flows/figures/clean-ties.ts';
import { ImpossibleFigure } from '../../../flows/figures/quantity.ts';

const missRate = fc.double({ min: 0.001, max: 0.99, noNaN: true });
const confidence = fc.double({ min: 0.5, max: 0.9999, noNaN: true });

describe('clean ties needed', () => {
  test('is the smallest run an unrepaired knotter would rarely manage', () => {
    fc.assert(
      fc.property(missRate, confidence, (p, c) => {
        const n = cleanTiesNeeded(p, c);
        expect(chanceOfCleanRun(n, p)).toBeLessThanOrEqual((1 - c) * (1 + 1e-6));
        if (n > 1) expect(chanceOfCleanRun(n - 1, p)).toBeGreaterThan(1 - c);
      }),
    );
  });

  test('never falls when more confidence is asked, never rises when the knotter was worse', () => {
    fc.assert(
      fc.property(missRate, missRate, confidence, confidence, (p, q, c, d) => {
        expect(cleanTiesNeeded(p, Math.max(c, d))).toBeGreaterThanOrEqual(cleanTiesNeeded(p, Math.min(c, d)));
        expect(cleanTiesNeeded(Math.max(p, q), c)).toBeLessThanOrEqual(cleanTiesNeeded(Math.min(p, q), c));
      }),
    );
  });

  test('the bound after exactly that many clean ties lies at or below the rate to rule out', () => {
    fc.assert(
      fc.property(missRate, confidence, (p, c) => {
        expect(upperBoundAfterClean(cleanTiesNeeded(p, c), c)).toBeLessThanOrEqual(p * (1 + 1e-6));
      }),
    );
  });

  test('decimals count as written: 0.9 missed and 0.9999 sure is four ties, not five', () => {
    expect(cleanTiesNeeded(0.9, 0.9999)).toBe(4);
    expect(cleanTiesNeeded(0.9, 0.9)).toBe(1);
  });

  test('a knotter that always missed is proved by one tie', () => {
    expect(cleanTiesNeeded(1, 0.9999)).toBe(1);
  });

  test('forgiving a miss always costs more ties, and the run asked for is minimal', () => {
    const chance = (n: number, p: number) => (1 - p) ** n + n * p * (1 - p) ** (n - 1);
    fc.assert(
      fc.property(missRate, confidence, (p, c) => {
        const n = tiesNeededForgivingOneMiss(p, c);
        expect(n).toBeGreaterThan(cleanTiesNeeded(p, c));
        expect(chance(n, p)).toBeLessThanOrEqual((1 - c) * (1 + 1e-6));
        if (n > 2) expect(chance(n - 1, p)).toBeGreaterThan(1 - c);
      }),
    );
  });

  test('no ties at all prove nothing, and each further clean tie lowers the bound', () => {
    expect(upperBoundAfterClean(0, 0.95)).toBe(1);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), confidence, (n, c) => {
        expect(upperBoundAfterClean(n + 1, c)).toBeLessThan(upperBoundAfterClean(n, c));
      }),
    );
  });

  test('impossible input is refused in plain speech', () => {
    expect(() => cleanTiesNeeded(0, 0.95)).toThrow(
      new ImpossibleFigure(
        'The miss rate before the repair of 0 is outside 0.000001 to 1. Say the miss rate before the repair again.',
      ),
    );
    expect(() => cleanTiesNeeded(1.2, 0.95)).toThrow(ImpossibleFigure);
    expect(() => cleanTiesNeeded(0.1, 1)).toThrow(ImpossibleFigure);
    expect(() => upperBoundAfterClean(2.5, 0.95)).toThrow(
      new ImpossibleFigure(
        'The number of clean ties must be a whole number, not 2.5. Say the number of clean ties again.',
      ),
    );
    expect(() => chanceOfCleanRun(-1, 0.1)).toThrow(ImpossibleFigure);
    expect(() => tiesNeededForgivingOneMiss(Number.NaN, 0.95)).toThrow('is not a number');
  });
});
