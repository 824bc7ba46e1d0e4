import fc from 'fast-check';
import { expect, test } from 'vitest';
import { camOutlook } from '../../../flows/figures/cam-wear.ts';

test('every bale made is a bale fewer, down to none', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 200_000 }), (bales) => {
      const now = camOutlook(bales);
      const next = camOutlook(bales + 1);
      expect(now.balesToMaintenance.value - next.balesToMaintenance.value).toBe(bales < 20_000 ? 1 : 0);
      expect(next.balesToFailure.value).toBeLessThanOrEqual(now.balesToFailure.value);
      expect(next.meanWear.value).toBeGreaterThan(now.meanWear.value);
    }),
  );
  expect(camOutlook(200_000).balesToFailure.value).toBe(0);
});

test('it says that it is one published test and where', () => {
  expect(camOutlook(0).meanWear.assumptions[0]?.source).toMatch(/Performability Engineering 15\(1\)/);
  expect(() => camOutlook(-1)).toThrow('bale count');
});
