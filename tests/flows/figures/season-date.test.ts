import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateBalesRunOut } from '../../../flows/figures/season-date.ts';

test('the day comes as many days later as full days of bales, over month ends and leap days', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 3650 }), fc.integer({ min: 1, max: 1000 }), (days, perDay) => {
      const { date, fullDays } = dateBalesRunOut(days * perDay, perDay, '2027-12-31');
      expect(fullDays).toBe(days);
      expect((Date.parse(`${date}`) - Date.parse('2027-12-31')) / 86_400_000).toBe(days);
    }),
  );
  expect(dateBalesRunOut(1250, 100, '2028-02-20').date).toBe('2028-03-03');
});

test('ten years off is left open', () => {
  expect(dateBalesRunOut(10_000_000, 1, '2027-06-01').date).toBeNull();
});

test('a day that no calendar has is refused', () => {
  for (const day of ['2027-02-30', '2027-13-01', 'tomorrow', '27-6-1']) {
    expect(() => dateBalesRunOut(10, 1, day)).toThrow('That is not a day of the calendar.');
  }
  expect(() => dateBalesRunOut(10, 0, '2027-06-01')).toThrow('number of bales a day');
});
