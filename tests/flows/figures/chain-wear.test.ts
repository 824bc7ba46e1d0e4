import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chainWear } from '../../../flows/figures/chain-wear.ts';

test('stretching a new chain gives back the stretch', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.25, max: 3, noNaN: true }),
      fc.integer({ min: 4, max: 100 }),
      fc.double({ min: 0, max: 19, noNaN: true }),
      (pitch, pitches, percent) => {
        const measured = pitch * pitches * (1 + percent / 100);
        expect(chainWear(pitch, pitches, measured).elongation.value).toBeCloseTo(percent, 9);
      },
    ),
  );
});

test('the verdict turns at two and three per cent', () => {
  const verdict = (measuredIn: number) => chainWear(0.625, 12, measuredIn).verdict;
  expect(verdict(7.5)).toBe('good');
  expect(verdict(7.649)).toBe('good');
  expect(verdict(7.651)).toBe('replace soon');
  expect(verdict(7.724)).toBe('replace soon');
  expect(verdict(7.726)).toBe('replace now');
});

test('a miscounted chain is refused, not judged', () => {
  expect(() => chainWear(0.625, 12, 8.125 + 1)).toThrow(
    'The measured chain length of 9.125 inches is outside',
  );
  expect(() => chainWear(0.625, 12, 6.875)).toThrow('measured chain length');
  expect(() => chainWear(5, 12, 60)).toThrow('chain pitch');
});
