import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysOfBaling, seasonDate } from '../../../flows/figures/season-date.ts';
import { type CalendarDay, isDayOfCalendar } from '../../../grammar/calendar.ts';

const anyDay = fc
  .record({ month: fc.integer({ min: 1, max: 12 }), day: fc.integer({ min: 1, max: 31 }) })
  .filter(isDayOfCalendar);
const day = (month: number, dayOfMonth: number): CalendarDay => ({ month, day: dayOfMonth });
const SUMMER = { begins: day(6, 1), ends: day(9, 30) };

/** The rule in the words of the docstring: one bale a day, a day at a time. */
function byWalking(days: number, today: CalendarDay, begins: CalendarDay, ends: CalendarDay) {
  const dayOf = (ms: number) => day(new Date(ms).getUTCMonth() + 1, new Date(ms).getUTCDate());
  const isSame = (a: CalendarDay, b: CalendarDay) => a.month === b.month && a.day === b.day;
  // Leap years only, one after the other.
  const after = (ms: number) => {
    const next = ms + 86_400_000;
    return new Date(next).getUTCFullYear() > 2000 ? Date.UTC(2000, 0, 1) : next;
  };
  let at = Date.UTC(2000, begins.month - 1, begins.day);
  const inSeason: CalendarDay[] = [];
  for (;;) {
    inSeason.push(dayOf(at));
    if (isSame(dayOf(at), ends)) break;
    at = after(at);
  }
  const here = inSeason.findIndex((each) => isSame(each, today));
  let [season, index] = here < 0 ? [1, 0] : [0, here];
  for (let left = days; left > 0; left--) {
    index += 1;
    if (index === inSeason.length) [season, index] = [season + 1, 0];
  }
  return { date: season > 10 ? null : inSeason[index], season };
}

describe('the day of a season on which bales run out', () => {
  test('is where one gets to by going through the calendar day by day', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 1, max: 400 }),
        anyDay,
        anyDay,
        anyDay,
        (days, perDay, today, begins, ends) => {
          const { date, season } = seasonDate(days * perDay, perDay, today, { begins, ends });
          expect({ date, season }).toEqual(byWalking(days, today, begins, ends));
        },
      ),
    );
  });

  test('goes on in the next season where this one is too short, and waits for it where none is running', () => {
    expect(seasonDate(1000, 100, day(7, 1), SUMMER)).toMatchObject({ date: day(7, 11), season: 0 });
    expect(seasonDate(1000, 100, day(9, 28), SUMMER)).toMatchObject({ date: day(6, 8), season: 1 });
    expect(seasonDate(1000, 100, day(1, 15), SUMMER)).toMatchObject({ date: day(6, 11), season: 1 });
  });

  test('may lie in a season that runs over the end of the year', () => {
    const southern = { begins: day(11, 1), ends: day(2, 28) };
    expect(seasonDate(2000, 100, day(12, 25), southern)).toMatchObject({ date: day(1, 14), season: 0 });
  });

  test('is left open beyond ten seasons', () => {
    expect(seasonDate(10_000_000, 1, day(6, 1), SUMMER).date).toBeNull();
  });

  test.each([day(2, 30), day(4, 31), day(13, 1), day(6, 0), day(6, 1.5), day(0, 1)])(
    'is not reckoned from %j, which no calendar has',
    (noDay) => {
      expect(() => seasonDate(10, 1, noDay, SUMMER)).toThrow('That is not a day of the calendar.');
      expect(() => seasonDate(10, 1, day(6, 1), { ...SUMMER, ends: noDay })).toThrow('not a day');
    },
  );

  test('needs bales to be made in a day', () => {
    expect(() => seasonDate(10, 0, day(6, 1), SUMMER)).toThrow('number of bales a day');
  });
});

test('full days of baling: a day begun is not one', () => {
  expect(daysOfBaling(1250, 100)).toBe(12);
  expect(daysOfBaling(99, 100)).toBe(0);
});
