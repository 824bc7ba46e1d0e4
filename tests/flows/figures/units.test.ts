import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figure } from '../../../flows/figures/figure.ts';
import { convert, inUnit } from '../../../flows/figures/units.ts';

const amount = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const length = fc.constantFrom('m', 'mm', 'in', 'ft', 'thou', 'sixteenth', 'eighth', 'quarter');

describe('units', () => {
  test('there and back is where it began', () => {
    fc.assert(
      fc.property(amount, length, length, (value, from, to) => {
        const back = convert('length', convert('length', value, from, to), to, from);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
      }),
    );
  });

  test('through a third unit is the same as straight', () => {
    fc.assert(
      fc.property(amount, length, length, length, (value, from, by, to) => {
        const straight = convert('length', value, from, to);
        const round = convert('length', convert('length', value, from, by), by, to);
        expect(Math.abs(round - straight)).toBeLessThanOrEqual(1e-12 * Math.abs(straight));
      }),
    );
  });

  test('a figure keeps what it takes for granted when its unit changes', () => {
    const push = figure(2, 'psi', { says: 'Compare with it.', standing: 'derived' });
    const metric = inUnit('pressure', push, 'kPa');
    expect(metric.unit).toBe('kPa');
    expect(metric.value).toBeCloseTo(13.79, 2);
    expect(metric.assumptions).toBe(push.assumptions);
  });

  test('a flat is a sixth of a turn', () => {
    expect(convert('angle', 6, 'flat', 'turn')).toBe(1);
  });
});
