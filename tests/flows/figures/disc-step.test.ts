import fc from 'fast-check';
import { expect, test } from 'vitest';
import { discDrive, discStep } from '../../../flows/figures/disc-step.ts';

const notches = fc.integer({ min: 2, max: 12 });

test('as many steps as notches make one turn', () => {
  fc.assert(
    fc.property(notches, (n) => {
      expect(n * discStep(n).value).toBeCloseTo(360, 10);
    }),
  );
});

test('only the right count of trips says the drive holds', () => {
  fc.assert(
    fc.property(notches, fc.integer({ min: 1, max: 100 }), (n, trips) => {
      expect(discDrive(n, trips)).toBe(trips === n ? 'holds' : 'slips');
    }),
  );
});

test('impossible discs are refused', () => {
  expect(() => discStep(1)).toThrow('number of disc notches');
  expect(() => discDrive(4, 0)).toThrow('number of trips');
});
