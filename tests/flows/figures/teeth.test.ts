import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../../../flows/figures/teeth.ts';

const teeth = fc.integer({ min: 5, max: 200 });
const pair = fc.record({ driverTeeth: teeth, drivenTeeth: teeth });

test('all the teeth of a wheel make one turn', () => {
  fc.assert(
    fc.property(teeth, (n) => {
      expect(n * degreesPerTooth(n).value).toBeCloseTo(360, 9);
    }),
  );
});

test('a train coupled to its mirror image gives the first speed back', () => {
  fc.assert(
    fc.property(fc.array(pair, { maxLength: 4 }), (train) => {
      const mirror = train.map(({ driverTeeth, drivenTeeth }) => ({
        driverTeeth: drivenTeeth,
        drivenTeeth: driverTeeth,
      }));
      expect(gearRatio([...train, ...mirror])).toBeCloseTo(1, 10);
    }),
  );
});

test('trains multiply', () => {
  fc.assert(
    fc.property(fc.array(pair, { maxLength: 3 }), fc.array(pair, { maxLength: 3 }), (a, b) => {
      const product = gearRatio(a) * gearRatio(b);
      expect(Math.abs(gearRatio([...a, ...b]) / product - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('impossible wheels are refused', () => {
  expect(() => degreesPerTooth(2)).toThrow('The number of teeth of 2 is outside 5 to 200.');
  expect(() => gearRatio([{ driverTeeth: 12, drivenTeeth: 3.5 }])).toThrow('number of driven teeth');
  expect(() => lastShaftSpeed(540, 0)).toThrow('gear ratio');
  expect(() => lastShaftSpeed(5400, 6)).toThrow('shaft speed');
});
