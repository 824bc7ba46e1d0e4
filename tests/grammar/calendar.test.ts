import { describe, expect, test } from 'vitest';
import {
  type CalendarDay,
  DAY_PHRASES,
  dayInventory,
  isDayOfCalendar,
  readDay,
  sayDay,
} from '../../grammar/calendar.ts';
import { sayInventory, sayText } from '../../grammar/say.ts';

/** Every day that can be heard, those no month has among them. */
const HEARD: readonly CalendarDay[] = Array.from({ length: 12 * 31 }, (_, at) => ({
  month: Math.floor(at / 31) + 1,
  day: (at % 31) + 1,
}));

describe('a day of the calendar', () => {
  test('is one that the computer calendar of a leap year has too', () => {
    for (const { month, day } of HEARD) {
      const date = new Date(Date.UTC(2000, month - 1, day));
      expect(isDayOfCalendar({ month, day }), `${month}/${day}`).toBe(date.getUTCMonth() === month - 1);
    }
    expect(HEARD.filter(isDayOfCalendar)).toHaveLength(366);
  });

  test.each([
    { month: 0, day: 1 },
    { month: 13, day: 1 },
    { month: 6, day: 0 },
    { month: 6, day: 1.5 },
    { month: 6, day: Number.NaN },
  ])('%j is none', (day) => {
    expect(isDayOfCalendar(day)).toBe(false);
  });

  test('is read as it is said, impossible ones too, so that they can be questioned', () => {
    expect(DAY_PHRASES).toHaveLength(HEARD.length);
    for (const day of HEARD) {
      const words = sayText(sayDay(day)).toLowerCase().replaceAll('-', ' ');
      expect(DAY_PHRASES).toContain(words);
      expect(readDay(words)).toEqual({ ok: true, value: day });
    }
  });

  test('is not made of anything else', () => {
    for (const words of ['june', 'tenth', 'june ten', 'the tenth of june', 'june thirty second', '']) {
      expect(readDay(words)).toEqual({ ok: false, why: 'dayUnclear' });
    }
  });

  test('has clips', () => {
    expect(sayInventory()).toEqual(expect.arrayContaining([...dayInventory()]));
  });
});
