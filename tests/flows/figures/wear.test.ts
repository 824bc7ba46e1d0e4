import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forecastWear, type WearForecast, type WearQuestion } from '../../../flows/figures/wear.ts';

function forecast(question: WearQuestion): Extract<WearForecast, { kind: 'forecast' }> {
  const answer = forecastWear(question);
  if (answer.kind !== 'forecast') throw new Error(answer.says);
  return answer;
}

const readings = [
  { bales: 5000, wearMm: 0.1 },
  { bales: 10_000, wearMm: 0.22 },
  { bales: 15_000, wearMm: 0.31 },
  { bales: 20_000, wearMm: 0.43 },
];
const question: WearQuestion = { readings, limitMm: 0.5, balesNow: 20_000, from: 'run in', confidence: 0.9 };

describe('wear forecast', () => {
  test('wear without scatter is forecast to the bale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (rate, set) => {
          const exact = [4, 8, 12].map((k) => ({ bales: 1000 * k, wearMm: set + rate * k }));
          const answer = forecast({ ...question, readings: exact, limitMm: 5, balesNow: 12_000 });
          const at = (1000 * (5 - set)) / rate;
          expect(answer.limitAt.value / at).toBeCloseTo(1, 9);
          expect(answer.earliestLimitAt.value / at).toBeCloseTo(1, 6);
          expect(answer.ratePerThousandBales.value).toBeCloseTo(rate, 9);
        },
      ),
    );
  });

  test('early, likely and late come in that order, and surer is wider', () => {
    const wear = fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 5, maxLength: 8 });
    fc.assert(
      fc.property(wear, fc.constantFrom('run in' as const, 'new at zero' as const), (noise, from) => {
        const noisy = noise.map((n, i) => ({ bales: 3000 * (i + 1), wearMm: 0.06 * (i + 1) + n }));
        const at = (confidence: number) =>
          forecastWear({ ...question, readings: noisy, from, limitMm: 1, confidence });
        const loose = at(0.6);
        const sure = at(0.8);
        fc.pre(loose.kind === 'forecast' && sure.kind === 'forecast');
        expect(loose.earliestLimitAt.value).toBeLessThanOrEqual(loose.limitAt.value * (1 + 1e-9));
        expect(loose.latestLimitAt.value).toBeGreaterThanOrEqual(loose.limitAt.value * (1 - 1e-9));
        expect(sure.earliestLimitAt.value).toBeLessThanOrEqual(loose.earliestLimitAt.value * (1 + 1e-9));
        expect(sure.latestLimitAt.value).toBeGreaterThanOrEqual(loose.latestLimitAt.value * (1 - 1e-9));
      }),
    );
  });

  test('the early count is where the upper edge of the band, worked out point by point, meets the limit', () => {
    const { earliestLimitAt } = forecast(question);
    const n = readings.length;
    const meanX = readings.reduce((sum, r) => sum + r.bales, 0) / n;
    const meanY = readings.reduce((sum, r) => sum + r.wearMm, 0) / n;
    const sxx = readings.reduce((sum, r) => sum + (r.bales - meanX) ** 2, 0);
    const slope = readings.reduce((sum, r) => sum + (r.bales - meanX) * (r.wearMm - meanY), 0) / sxx;
    const rss = readings.reduce((sum, r) => sum + (r.wearMm - meanY - slope * (r.bales - meanX)) ** 2, 0);
    const t90with2 = 2.91998558; // Student's t, two-sided 90 %, 2 degrees of freedom: standard tables print 2.920.
    const edge = (x: number) =>
      meanY + slope * (x - meanX) + t90with2 * Math.sqrt((rss / (n - 2)) * (1 / n + (x - meanX) ** 2 / sxx));
    expect(edge(earliestLimitAt.value)).toBeCloseTo(0.5, 8);
  });

  test('a part already past its early count has no bales left', () => {
    expect(forecast({ ...question, balesNow: 60_000 }).balesLeft.value).toBe(0);
    const { earliestLimitAt, balesLeft } = forecast(question);
    expect(balesLeft.value).toBeCloseTo(earliestLimitAt.value - 20_000, 6);
  });

  test('a reading taken when new adds nothing to a line pinned at new', () => {
    const pinned = { ...question, from: 'new at zero' as const };
    expect(forecast({ ...pinned, readings: [{ bales: 0, wearMm: 0 }, ...readings] })).toEqual(
      forecast(pinned),
    );
  });

  test('readings that show no wear say so instead of a number', () => {
    const flat = [0.2, 0.1, 0.2, 0.1].map((wearMm, i) => ({ bales: 1000 * i, wearMm }));
    const falling = [0.3, 0.2, 0.1].map((wearMm, i) => ({ bales: 1000 * i, wearMm }));
    for (const bad of [flat, falling]) {
      expect(forecastWear({ ...question, readings: bad })).toEqual({
        kind: 'no wear trend',
        says: 'The readings do not show steady wear yet. Measure again after more bales.',
      });
    }
  });

  test('impossible readings are refused', () => {
    expect(() => forecastWear({ ...question, readings: readings.slice(0, 2) })).toThrow(
      'at least 3 readings',
    );
    expect(() => forecastWear({ ...question, readings: [{ bales: -1, wearMm: 0.1 }] })).toThrow('bale count');
    expect(() => forecastWear({ ...question, limitMm: 0 })).toThrow('wear limit');
  });
});
