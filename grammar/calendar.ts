import { type Reading, refuse } from './reading.ts';

/**
 * A day without its year, as a season is spoken of: "june tenth". The year is left out on purpose: seasons come back,
 * and the clock of a tablet in a field may be wrong.
 */
export interface CalendarDay {
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31; whether the month has it is for {@link isDayOfCalendar} to say. */
  readonly day: number;
}

/** The twenty-ninth of February is a day of the calendar, so every month has the days of its longest year. */
const MONTHS: readonly { readonly name: string; readonly days: number }[] = [
  { name: 'January', days: 31 },
  { name: 'February', days: 29 },
  { name: 'March', days: 31 },
  { name: 'April', days: 30 },
  { name: 'May', days: 31 },
  { name: 'June', days: 30 },
  { name: 'July', days: 31 },
  { name: 'August', days: 31 },
  { name: 'September', days: 30 },
  { name: 'October', days: 31 },
  { name: 'November', days: 30 },
  { name: 'December', days: 31 },
];

const FIRST_ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
  'thirteenth',
  'fourteenth',
  'fifteenth',
  'sixteenth',
  'seventeenth',
  'eighteenth',
  'nineteenth',
  'twentieth',
] as const;

const ORDINALS: readonly string[] = [
  ...FIRST_ORDINALS,
  ...FIRST_ORDINALS.slice(0, 9).map((unit) => `twenty-${unit}`),
  'thirtieth',
  'thirty-first',
];

export const MONTH_NAMES: readonly string[] = MONTHS.map(({ name }) => name);

/** Every month with every number a day can have, those it lacks too: a slip is heard for what it is, and questioned. */
const HEARD: ReadonlyMap<string, CalendarDay> = new Map(
  MONTH_NAMES.flatMap((name, month) =>
    ORDINALS.map((ordinal, day) => [
      `${name} ${ordinal}`.toLowerCase().replaceAll('-', ' '),
      { month: month + 1, day: day + 1 },
    ]),
  ),
);

/** A day is heard as one word, because "june tenth" is far easier to tell from its neighbours than its parts are. */
export const DAY_PHRASES: readonly string[] = [...HEARD.keys()];

/** Reads "june tenth". @param words lower-case words as heard */
export function readDay(words: string): Reading<CalendarDay> {
  const day = HEARD.get(words);
  return day ? { ok: true, value: day } : refuse('dayUnclear');
}

/** Whether the month has that day. */
export function isDayOfCalendar({ month, day }: CalendarDay): boolean {
  const days = MONTHS[month - 1]?.days ?? 0;
  return Number.isInteger(day) && day >= 1 && day <= days;
}

/** A day as it is spoken: "June" "tenth". @throws RangeError for a day no month has */
export function sayDay({ month, day }: CalendarDay): readonly string[] {
  const [name, ordinal] = [MONTH_NAMES[month - 1], ORDINALS[day - 1]];
  if (name === undefined || ordinal === undefined) throw new RangeError(`There is no day ${month}/${day}.`);
  return [name, ordinal];
}

/** Every piece that {@link sayDay} can say. */
export function dayInventory(): readonly string[] {
  return [...MONTH_NAMES, ...ORDINALS];
}
