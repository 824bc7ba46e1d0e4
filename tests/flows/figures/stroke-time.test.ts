import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crankDegreesIn, strokeTime } from '../../../flows/figures/stroke-time.ts';

const strokesPerMinute = fc.double({ min: 20, max: 150, noNaN: true });

test('one stroke is one crank turn', () => {
  fc.assert(
    fc.property(strokesPerMinute, (spm) => {
      expect(crankDegreesIn(strokeTime(spm).value, spm).value).toBeCloseTo(360, 9);
    }),
  );
});

test('the faster the baler, the more degrees a fixed lag takes', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 149, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      (spm, s) => {
        expect(crankDegreesIn(s, spm + 1).value).toBeGreaterThan(crankDegreesIn(s, spm).value);
      },
    ),
  );
});

test('impossible speeds are refused', () => {
  expect(() => strokeTime(0)).toThrow('strokes a minute');
  expect(() => crankDegreesIn(-1, 80)).toThrow('The time of minus 1 seconds is outside 0 to 60 seconds.');
});
