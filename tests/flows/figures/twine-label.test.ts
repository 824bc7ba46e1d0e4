import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  checkLabelByCount,
  leastHonestLength,
  leastHonestStrength,
} from '../../../flows/figures/twine-label.ts';

test('a count is blamed exactly when the twine behind it is below the least honest length', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 100, max: 2000 }),
      fc.integer({ min: 50, max: 2000 }),
      (expected, counted) => {
        const label = 9000;
        const lengthCountedFt = (label * counted) / expected;
        const { verdict } = checkLabelByCount(label, expected, counted);
        expect(verdict === 'label borne out').toBe(lengthCountedFt >= leastHonestLength(label).value - 1e-6);
      },
    ),
  );
});

test('a low count never blames the twine outright', () => {
  expect(checkLabelByCount(9000, 540, 300).verdict).toContain('measure the bales first');
});

test('labels nobody prints are refused', () => {
  expect(() => leastHonestLength(3)).toThrow('length on the label');
  expect(() => leastHonestStrength(5000)).toThrow('knot strength on the label');
  expect(() => checkLabelByCount(9000, 540, 0)).toThrow('number of bales counted');
});
