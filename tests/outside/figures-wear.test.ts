import studentTQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, test } from 'vitest';
import { camOutlook } from '../../flows/figures/cam-wear.ts';
import { fitLine, fitLineThroughOrigin } from '../../flows/figures/line-fit.ts';
import { seasonDate } from '../../flows/figures/season-date.ts';
import { studentT } from '../../flows/figures/student-t.ts';
import { forecastWear } from '../../flows/figures/wear.ts';

/** Digits to which a certified value is met: agreement to nine significant figures. */
const NINE_FIGURES = 1e-9;
const relativeError = (ours: number, certified: number) => Math.abs(ours / certified - 1);

describe('line fit against certified values', () => {
  // Source: NIST Statistical Reference Datasets, linear regression, "Norris" (J. Norris, calibration of ozone monitors):
  // 36 readings as [y, x] and certified values.
  const NORRIS: readonly (readonly [y: number, x: number])[] = [
    [0.1, 0.2],
    [338.8, 337.4],
    [118.1, 118.2],
    [888.0, 884.6],
    [9.2, 10.1],
    [228.1, 226.5],
    [668.5, 666.3],
    [998.5, 996.3],
    [449.1, 448.6],
    [778.9, 777.0],
    [559.2, 558.2],
    [0.3, 0.4],
    [0.1, 0.6],
    [778.1, 775.5],
    [668.8, 666.9],
    [339.3, 338.0],
    [448.9, 447.5],
    [10.8, 11.6],
    [557.7, 556.0],
    [228.3, 228.1],
    [998.0, 995.8],
    [888.8, 887.6],
    [119.6, 120.2],
    [0.3, 0.3],
    [0.6, 0.3],
    [557.6, 556.8],
    [339.3, 339.1],
    [888.0, 887.2],
    [998.5, 999.0],
    [778.9, 779.0],
    [10.2, 11.1],
    [117.6, 118.3],
    [228.9, 229.2],
    [668.4, 669.1],
    [449.2, 448.9],
    [0.2, 0.5],
  ];

  test('Norris', () => {
    const line = fitLine(NORRIS.map(([y, x]) => ({ x, y })));
    expect(relativeError(line.slope, 1.00211681802045)).toBeLessThan(NINE_FIGURES);
    expect(relativeError(line.intercept, -0.262323073774029)).toBeLessThan(NINE_FIGURES);
    expect(relativeError(line.residualSd, 0.884796396144373)).toBeLessThan(NINE_FIGURES);
    expect(relativeError(line.slopeError, 0.429796848199937e-3)).toBeLessThan(NINE_FIGURES);
    expect(line.spareReadings).toBe(34);
  });

  // Source: NIST Statistical Reference Datasets, linear regression, "NoInt1": x 60 to 70, y 130 to 140, no intercept.
  test('NoInt1', () => {
    const line = fitLineThroughOrigin(Array.from({ length: 11 }, (_, i) => ({ x: 60 + i, y: 130 + i })));
    expect(relativeError(line.slope, 2.07438016528926)).toBeLessThan(NINE_FIGURES);
    expect(relativeError(line.slopeError, 0.165289256198347e-1)).toBeLessThan(NINE_FIGURES);
    expect(relativeError(line.residualSd, 3.56753034006338)).toBeLessThan(NINE_FIGURES);
    expect(line.spareReadings).toBe(10);
  });
});

describe("Student's t", () => {
  // Source: @stdlib/stats-base-dists-t-quantile, an independent implementation.
  test('agrees with a reference library', () => {
    for (const freedom of [1, 2, 3, 5, 10, 30, 100, 1000]) {
      for (const confidence of [0.5, 0.8, 0.9, 0.95, 0.99, 0.999, 0.9999]) {
        expect(
          relativeError(studentT(confidence, freedom), studentTQuantile((1 + confidence) / 2, freedom)),
        ).toBeLessThan(NINE_FIGURES);
      }
    }
  });

  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values of t, column 0.975.
  test.each([
    [1, '12.706'],
    [2, '4.303'],
    [3, '3.182'],
    [5, '2.571'],
    [10, '2.228'],
    [30, '2.042'],
    [100, '1.984'],
  ])('printed table, %i degrees of freedom: %s', (freedom, printed) => {
    expect(studentT(0.95, freedom).toFixed(3)).toBe(printed);
  });
});

describe('wear forecast', () => {
  // Source: recomputed: least squares through the origin, Student's t with 2 degrees of freedom.
  test('0.10, 0.22, 0.31 mm at 5, 10, 15 thousand bales, limit 0.50 mm', () => {
    const answer = forecastWear({
      readings: [
        { bales: 5000, wearMm: 0.1 },
        { bales: 10_000, wearMm: 0.22 },
        { bales: 15_000, wearMm: 0.31 },
      ],
      limitMm: 0.5,
      balesNow: 15_000,
      from: 'new at zero',
      confidence: 0.95,
    });
    if (answer.kind !== 'forecast') throw new Error(answer.says);
    expect(answer.ratePerThousandBales.value.toFixed(4)).toBe('0.0210');
    expect((answer.limitAt.value / 1000).toFixed(1)).toBe('23.8');
    expect((answer.earliestLimitAt.value / 1000).toFixed(1)).toBe('21.7');
    expect((answer.latestLimitAt.value / 1000).toFixed(1)).toBe('26.3');
    expect(answer.balesLeft.value).toBeCloseTo(answer.earliestLimitAt.value - 15_000, 6);
    expect(answer.inspectAt.value).toBeCloseTo(0.8 * answer.earliestLimitAt.value, 6);
    const june = { month: 6, day: 1 };
    const season = { begins: june, ends: { month: 9, day: 30 } };
    expect(seasonDate(answer.balesLeft.value, 400, june, season).date).toEqual({ month: 6, day: 17 });
  });

  // Source: International Journal of Performability Engineering 15(1), 2019, 23-34: mean wear at most 0.87 mm at
  // 20,000 bales, no tie at 2.3 mm, maintenance at 20,000. The straight line through them is recomputed.
  test('published cam wear', () => {
    expect(camOutlook(20_000).meanWear.value).toBeCloseTo(0.87, 12);
    expect(camOutlook(1000).meanWear.value.toFixed(4)).toBe('0.0435');
    expect((camOutlook(0).balesToFailure.value / 1000).toFixed(1)).toBe('52.9');
    expect((camOutlook(20_000).balesToFailure.value / 1000).toFixed(1)).toBe('32.9');
    expect(camOutlook(5000).balesToMaintenance.value).toBe(15_000);
  });
});
