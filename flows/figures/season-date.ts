import type { Assumption } from './figure.ts';
import { ImpossibleFigure, possible, type Quantity } from './quantity.ts';
import { wholeThatFit } from './whole-count.ts';

const BALES_LEFT: Quantity = { name: 'number of bales left', unit: '', low: 0, high: 10_000_000 };
export const BALES_PER_DAY: Quantity = { name: 'number of bales a day', unit: '', low: 1, high: 10_000 };
const DAY_MS = 86_400_000;
/** A forecast further off than this says nothing; the date is then left open. */
const LAST_USEFUL_DAY = 3650;

export interface SeasonDate {
  /** Day on which the bales run out, as YYYY-MM-DD, or null when that is more than ten years off. */
  readonly date: string | null;
  /** Full days of baling before it. */
  readonly fullDays: number;
  readonly assumptions: readonly Assumption[];
}

/**
 * Calendar day on which `balesLeft` are used up when baling starts on `firstDay` and goes on every day.
 * @param balesLeft 0 to 10,000,000
 * @param balesPerDay 1 to 10,000
 * @param firstDay YYYY-MM-DD; asked of the person, because a tablet's clock may be wrong
 * @throws ImpossibleFigure outside those ranges or for a day no calendar has
 */
export function dateBalesRunOut(balesLeft: number, balesPerDay: number, firstDay: string): SeasonDate {
  const firstDayMs = dayStart(firstDay);
  const fullDays = wholeThatFit(possible(BALES_LEFT, balesLeft) / possible(BALES_PER_DAY, balesPerDay));
  return {
    date: fullDays > LAST_USEFUL_DAY ? null : isoDay(firstDayMs + fullDays * DAY_MS),
    fullDays,
    assumptions: [{ says: 'Baling every day at the same pace; rain puts it off.', standing: 'derived' }],
  };
}

function dayStart(day: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  // Date.parse rolls 30 February over into March on some engines; a day that does not come back the same is not a day.
  if (Number.isNaN(ms) || isoDay(ms) !== day) {
    throw new ImpossibleFigure(
      'That is not a day of the calendar. Say the day, the month and the year again.',
    );
  }
  return ms;
}

function isoDay(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}
