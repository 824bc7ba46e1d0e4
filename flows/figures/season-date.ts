import { type CalendarDay, isDayOfCalendar } from '../../grammar/calendar.ts';
import type { Assumption } from './figure.ts';
import { ImpossibleFigure, possible, type Quantity } from './quantity.ts';
import { wholeThatFit } from './whole-count.ts';

const BALES_LEFT: Quantity = { name: 'number of bales left', unit: '', low: 0, high: 10_000_000 };
export const BALES_PER_DAY: Quantity = { name: 'number of bales a day', unit: '', low: 1, high: 10_000 };
/** A forecast further off than this says nothing; the date is then left open. */
const LAST_USEFUL_SEASON = 10;

/** The part of a year in which hay is baled; it may run over the end of the year. Both days are in it. */
export interface Season {
  readonly begins: CalendarDay;
  readonly ends: CalendarDay;
}

export interface SeasonDate {
  /** Day on which the bales run out, or null when that is more than ten seasons off. */
  readonly date: CalendarDay | null;
  /** Seasons from today: 0 is the one that is running, 1 the next that begins. */
  readonly season: number;
  readonly assumptions: readonly Assumption[];
}

/**
 * Full days of baling that `balesLeft` last.
 * @param balesLeft 0 to 10,000,000
 * @param balesPerDay 1 to 10,000
 * @throws ImpossibleFigure outside those ranges
 */
export function daysOfBaling(balesLeft: number, balesPerDay: number): number {
  return wholeThatFit(possible(BALES_LEFT, balesLeft) / possible(BALES_PER_DAY, balesPerDay));
}

/**
 * Day of the season on which `balesLeft` are used up, when baling goes on every day from `today` to the end of the
 * season, and again from the first day of the next. Days are told without a year, so a season over the end of
 * February is taken with its leap day: one day off in three years of four.
 * @param balesLeft 0 to 10,000,000
 * @param balesPerDay 1 to 10,000
 * @param today asked of the person, because a tablet's clock may be wrong
 * @throws ImpossibleFigure outside those ranges or for a day no calendar has
 */
export function seasonDate(
  balesLeft: number,
  balesPerDay: number,
  today: CalendarDay,
  { begins, ends }: Season,
): SeasonDate {
  const first = dayNumber(begins);
  const daysASeason = daysFromTo(first, dayNumber(ends)) + 1;
  const daysIn = daysFromTo(first, dayNumber(today));
  const isRunning = daysIn < daysASeason;
  const days = daysOfBaling(balesLeft, balesPerDay) + (isRunning ? daysIn : 0);
  const season = Math.floor(days / daysASeason) + (isRunning ? 0 : 1);
  return {
    date: season > LAST_USEFUL_SEASON ? null : dayAt(first + (days % daysASeason)),
    season,
    assumptions: [
      { says: 'Baling every day of the season at the same pace; rain puts it off.', standing: 'derived' },
    ],
  };
}

const DAY_MS = 86_400_000;
const DAYS_A_YEAR = 366;
/** Any leap year: it has every day a calendar can have. */
const LEAP_YEAR = 2000;
const YEAR_BEGINS_MS = Date.UTC(LEAP_YEAR, 0, 1);

/** 0 for the first of January. */
function dayNumber(day: CalendarDay): number {
  if (!isDayOfCalendar(day)) {
    throw new ImpossibleFigure('That is not a day of the calendar. Say the month and the day again.');
  }
  return (Date.UTC(LEAP_YEAR, day.month - 1, day.day) - YEAR_BEGINS_MS) / DAY_MS;
}

/** Days from one day to the next time the other comes round, 0 to 365. */
function daysFromTo(from: number, to: number): number {
  return (to - from + DAYS_A_YEAR) % DAYS_A_YEAR;
}

function dayAt(number: number): CalendarDay {
  const date = new Date(YEAR_BEGINS_MS + (number % DAYS_A_YEAR) * DAY_MS);
  return { month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}
