import fc from 'fast-check';
import { expect, test } from 'vitest';
import { studentT } from '../../../flows/figures/student-t.ts';

const confidence = fc.double({ min: 0.5, max: 0.9999, noNaN: true });

test('more confidence asks a wider t, more readings a narrower one', () => {
  fc.assert(
    fc.property(confidence, confidence, fc.integer({ min: 1, max: 500 }), (c, d, freedom) => {
      expect(studentT(Math.max(c, d), freedom)).toBeGreaterThanOrEqual(studentT(Math.min(c, d), freedom));
      expect(studentT(c, freedom + 1)).toBeLessThan(studentT(c, freedom));
    }),
  );
});

test('with one spare reading it is the tangent of a half-angle', () => {
  fc.assert(
    fc.property(confidence, (c) => {
      expect(studentT(c, 1) / Math.tan((Math.PI * c) / 2)).toBeCloseTo(1, 9);
    }),
  );
});

test('no spare reading is refused', () => {
  expect(() => studentT(0.95, 0)).toThrow('number of spare readings');
});
