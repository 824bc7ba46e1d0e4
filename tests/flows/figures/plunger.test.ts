import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  crankFromPlunger,
  plungerErrorFromSlip,
  plungerFromFullCompression,
} from '../../../flows/figures/plunger.ts';

const drive = fc
  .tuple(fc.double({ min: 4, max: 30, noNaN: true }), fc.double({ min: 1.25, max: 3.5, noNaN: true }))
  .map(([crankRadiusIn, rodToCrank]) => ({ crankRadiusIn, rodLengthIn: crankRadiusIn * rodToCrank }));
const angle = fc.double({ min: 0, max: 180, noNaN: true });

describe('plunger and crank', () => {
  test('each undoes the other', () => {
    fc.assert(
      fc.property(drive, fc.double({ min: 0, max: 179.9, noNaN: true }), (d, deg) => {
        expect(crankFromPlunger(d, plungerFromFullCompression(d, deg).value).value).toBeCloseTo(deg, 6);
      }),
    );
  });

  test('half a turn is the whole stroke, two crank radii', () => {
    fc.assert(
      fc.property(drive, (d) => {
        expect(plungerFromFullCompression(d, 0).value).toBe(0);
        expect(plungerFromFullCompression(d, 180).value).toBeCloseTo(2 * d.crankRadiusIn, 10);
        expect(crankFromPlunger(d, 2 * d.crankRadiusIn).value).toBeCloseTo(180, 5);
      }),
    );
  });

  test('the plunger only draws back on the way there, and comes back the same way', () => {
    fc.assert(
      fc.property(drive, angle, angle, (d, a, b) => {
        const at = (deg: number) => plungerFromFullCompression(d, deg).value;
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)) - 1e-9);
        expect(at(-a)).toBe(at(a));
        expect(at(360 - a)).toBeCloseTo(at(a), 9);
      }),
    );
  });

  test('a slip there and a slip back cancel', () => {
    fc.assert(
      fc.property(drive, angle, angle, (d, at, slip) => {
        const there = plungerErrorFromSlip(d, at, slip).value;
        const back = plungerErrorFromSlip(d, at + slip, -slip).value;
        expect(there + back).toBeCloseTo(0, 10);
      }),
    );
  });

  test('impossible drives are refused', () => {
    const d = { crankRadiusIn: 15, rodLengthIn: 40 };
    expect(() => crankFromPlunger(d, 31)).toThrow(
      'The plunger distance from full compression of 31 inches is outside 0 to 30 inches.',
    );
    expect(() => plungerFromFullCompression({ ...d, rodLengthIn: 16 }, 10)).toThrow('rod is too short');
    expect(() => plungerFromFullCompression({ ...d, crankRadiusIn: 1 }, 10)).toThrow('crank radius');
    expect(() => plungerFromFullCompression(d, 400)).toThrow('crank angle');
  });
});
