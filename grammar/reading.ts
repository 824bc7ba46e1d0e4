/** What came of reading a spoken value. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: ReadingFault };

/** Why a spoken value was not taken, each a sentence that is spoken. */
export const READING_LINES = {
  unitMissing: 'Say the number, then the unit.',
  numberUnclear: 'That number was not clear.',
  belowZero: 'A number below zero cannot be.',
  countUnclear: 'Say it like this: two out of ten.',
  countsUnclear: 'Those numbers were not clear.',
  noBales: 'It takes at least one bale.',
  moreMissesThanBales: 'There cannot be more misses than bales.',
  dayUnclear: 'Say the month, then the day: June tenth.',
} as const;

export type ReadingFault = keyof typeof READING_LINES;

export function refuse(why: ReadingFault): { readonly ok: false; readonly why: ReadingFault } {
  return { ok: false, why };
}
