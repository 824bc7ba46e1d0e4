import { describe, expect, test } from 'vitest';
import { convert } from '../../flows/figures/units.ts';

// Source: NIST Special Publication 811 (2008), appendix B.8, factors to seven digits or exact (bold there).
describe('factors of NIST Special Publication 811', () => {
  test.each([
    ['inch to metre', convert('length', 1, 'in', 'm'), 2.54e-2],
    ['foot to metre', convert('length', 1, 'ft', 'm'), 3.048e-1],
    ['thou (mil) to millimetre', convert('length', 1, 'thou', 'mm'), 2.54e-2],
    ['pound to kilogram', convert('mass', 1, 'lb', 'kg'), 4.535924e-1],
    ['short ton to kilogram', convert('mass', 1, 'short ton', 'kg'), 9.071847e2],
    ['pound-force to newton', convert('force', 1, 'lbf', 'N'), 4.448222],
    ['kilogram-force to newton', convert('force', 1, 'kgf', 'N'), 9.80665],
    ['psi to kilopascal', convert('pressure', 1, 'psi', 'kPa'), 6.894757],
    ['pound a cubic foot to kilogram a cubic metre', convert('density', 1, 'lb/ft3', 'kg/m3'), 1.601846e1],
    ['cubic foot to cubic metre', convert('volume', 1, 'ft3', 'm3'), 2.831685e-2],
    ['cubic inch to cubic metre', convert('volume', 1, 'in3', 'm3'), 1.638706e-5],
    ['revolution to degree', convert('angle', 1, 'turn', 'deg'), 360],
  ])('%s', (_, ours, published) => {
    expect(ours.toPrecision(7)).toBe(published.toPrecision(7));
  });

  // Source: recomputed from the exact foot and pound of the same tables.
  test('runnage: 1 m/kg is 1.48816 ft/lb, 1 ft/lb is 0.67197 m/kg', () => {
    expect(convert('runnage', 1, 'm/kg', 'ft/lb').toFixed(5)).toBe('1.48816');
    expect(convert('runnage', 1, 'ft/lb', 'm/kg').toFixed(5)).toBe('0.67197');
  });

  // Source: the inch is 25.4 mm exactly, NIST Special Publication 811, appendix B.
  test('spoken parts of an inch', () => {
    expect(convert('length', 1, 'sixteenth', 'mm')).toBeCloseTo(1.5875, 12);
    expect(convert('length', 1, 'eighth', 'mm')).toBeCloseTo(3.175, 12);
    expect(convert('length', 1, 'quarter', 'mm')).toBeCloseTo(6.35, 12);
    expect(convert('length', 2, 'quarter', 'mm')).toBeCloseTo(12.7, 12);
  });
});
