import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  baleDensity,
  baleVolume,
  baleWeight,
  densityChange,
  dryMatter,
} from '../../../flows/figures/bale.ts';

const size = fc.record({
  lengthIn: fc.double({ min: 24, max: 60, noNaN: true }),
  heightIn: fc.double({ min: 12, max: 24, noNaN: true }),
  widthIn: fc.double({ min: 12, max: 30, noNaN: true }),
});

test('weighing a bale gives back the density it was made with', () => {
  fc.assert(
    fc.property(size, fc.double({ min: 3, max: 11, noNaN: true }), (bale, density) => {
      expect(baleDensity(bale, baleWeight(bale, density).value).value).toBeCloseTo(density, 9);
    }),
  );
});

test('volume does not care which side is called length', () => {
  expect(baleVolume({ lengthIn: 14, heightIn: 18, widthIn: 16 }).value).toBeCloseTo(
    baleVolume({ lengthIn: 18, heightIn: 14, widthIn: 16 }).value,
    12,
  );
});

test('dry matter falls with moisture, from all of the bale to a tenth of it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 300, noNaN: true }),
      fc.double({ min: 0, max: 0.89, noNaN: true }),
      (lb, m) => {
        expect(dryMatter(lb, m + 0.01).value).toBeLessThan(dryMatter(lb, m).value);
      },
    ),
  );
  expect(dryMatter(50, 0).value).toBe(50);
  expect(dryMatter(50, 0.9).value).toBeCloseTo(5, 12);
});

test('density becomes a suspect above fifteen per cent', () => {
  expect(densityChange(11.4, 10).suspect).toBe(false);
  expect(densityChange(11.6, 10).suspect).toBe(true);
  expect(densityChange(8, 10).ratio.value).toBeCloseTo(0.8, 12);
});

test('impossible bales are refused', () => {
  const bale = { lengthIn: 36, heightIn: 14, widthIn: 18 };
  expect(() => baleVolume({ ...bale, widthIn: 80 })).toThrow('The bale width of 80 inches');
  expect(() => baleWeight(bale, 62)).toThrow('bale density');
  expect(() => baleDensity(bale, 1)).toThrow('bale weight');
  expect(() => dryMatter(50, 15)).toThrow('moisture share');
});
