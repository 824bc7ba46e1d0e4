import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endPressure, endPushHeld, endPushHeldUnevenly, knotRatio } from '../../../flows/figures/end-push.ts';

const knotLbf = fc.double({ min: 20, max: 1000, noNaN: true });
const strings = fc.constantFrom(1, 2, 3);

test('an even share holds what all strings hold together, and no other share holds more', () => {
  fc.assert(
    fc.property(knotLbf, strings, fc.double({ min: 0, max: 1, noNaN: true }), (knot, s, lean) => {
      const even = 1 / s;
      const share = Math.min(1, even + lean * (1 - even));
      expect(endPushHeldUnevenly(knot, even, s).value).toBeCloseTo(endPushHeld(knot, s).value, 8);
      expect(endPushHeldUnevenly(knot, share, s).value).toBeLessThanOrEqual(
        endPushHeld(knot, s).value * (1 + 1e-12),
      );
    }),
  );
});

test('one string carrying everything holds as if it were alone', () => {
  expect(endPushHeldUnevenly(130, 1, 2).value).toBe(endPushHeld(130, 1).value);
});

test('pressure times area is the push', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 2000, noNaN: true }), (push) => {
      expect(endPressure(push, 14, 18).value * 14 * 18).toBeCloseTo(push, 8);
    }),
  );
});

test('impossible loads are refused', () => {
  expect(() => endPushHeldUnevenly(130, 0.3, 2)).toThrow(
    'The share of the tightest string of 0.3 is outside 0.5 to 1.',
  );
  expect(() => endPushHeld(5)).toThrow('knot strength');
  expect(() => knotRatio(300, 230)).toThrow('The knot strength of 300 pounds is outside 20 to 230 pounds.');
});
