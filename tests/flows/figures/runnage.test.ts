import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  runnageFromLength,
  texFromRunnage,
  twineLengthFromMass,
  twineMassOnBales,
} from '../../../flows/figures/runnage.ts';

const massKg = fc.double({ min: 0.5, max: 400, noNaN: true });
const runnage = fc.double({ min: 50, max: 2000, noNaN: true });

test('weighing a length gives back the runnage it was made with', () => {
  fc.assert(
    fc.property(massKg, runnage, (mass, r) => {
      expect(runnageFromLength(twineLengthFromMass(mass, r).value, mass).value).toBeCloseTo(r, 8);
    }),
  );
});

test('tex times runnage is always a million', () => {
  fc.assert(
    fc.property(runnage, (r) => {
      expect(texFromRunnage(r).value * r).toBeCloseTo(1_000_000, 6);
    }),
  );
});

test('twice the bales weigh twice, twice the runnage weighs half', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 5000 }),
      fc.double({ min: 3, max: 60, noNaN: true }),
      (bales, ft) => {
        const mass = twineMassOnBales(bales, ft, 200).value;
        expect(twineMassOnBales(2 * bales, ft, 200).value / mass).toBeCloseTo(2, 10);
        expect(twineMassOnBales(bales, ft, 400).value / mass).toBeCloseTo(0.5, 10);
      },
    ),
  );
});

test('impossible twine is refused', () => {
  expect(() => texFromRunnage(10)).toThrow('The twine runnage of 10 metres a kilogram is outside 50 to 2000');
  expect(() => twineLengthFromMass(0, 200)).toThrow('weight of twine');
  expect(() => twineMassOnBales(1.5, 17, 200)).toThrow('whole number');
});
