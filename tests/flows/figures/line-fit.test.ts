import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLine, fitLineThroughOrigin } from '../../../flows/figures/line-fit.ts';

const value = fc.double({ min: -100, max: 100, noNaN: true });
const points = fc
  .array(fc.record({ x: fc.integer({ min: -50, max: 50 }), y: value }), { minLength: 3, maxLength: 20 })
  .filter((all) => new Set(all.map(({ x }) => x)).size > 1);

describe('line fit', () => {
  test('finds a line it was given', () => {
    fc.assert(
      fc.property(value, value, (intercept, slope) => {
        const line = fitLine([1, 2, 5, 9].map((x) => ({ x, y: intercept + slope * x })));
        expect(line.intercept).toBeCloseTo(intercept, 9);
        expect(line.slope).toBeCloseTo(slope, 9);
        expect(line.residualSd).toBeCloseTo(0, 9);
        expect(fitLineThroughOrigin([1, 2, 5].map((x) => ({ x, y: slope * x }))).slope).toBeCloseTo(slope, 9);
      }),
    );
  });

  test('no other line lies closer to the readings', () => {
    fc.assert(
      fc.property(points, value, value, (all, nudgeUp, nudgeTilt) => {
        const line = fitLine(all);
        const squares = (intercept: number, slope: number) =>
          all.reduce((sum, { x, y }) => sum + (y - intercept - slope * x) ** 2, 0);
        const best = squares(line.intercept, line.slope);
        const other = squares(line.intercept + nudgeUp, line.slope + nudgeTilt);
        expect(other).toBeGreaterThanOrEqual(best * (1 - 1e-9) - 1e-9);
      }),
    );
  });

  test('says what is missing', () => {
    expect(() =>
      fitLine([
        { x: 1, y: 1 },
        { x: 2, y: 2 },
      ]),
    ).toThrow('A trend needs at least 3 readings and there are 2. Say another reading.');
    expect(() => fitLine([1, 2, 3].map((y) => ({ x: 5, y })))).toThrow('same count');
    expect(() => fitLineThroughOrigin([1, 2].map((y) => ({ x: 0, y })))).toThrow('taken when new');
    expect(() =>
      fitLineThroughOrigin([
        { x: 1, y: Number.NaN },
        { x: 2, y: 1 },
      ]),
    ).toThrow('not a number');
  });
});
