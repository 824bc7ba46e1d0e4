import type { Dimension, UnitId } from '../../grammar/measurements.ts';

/** A number being tapped in: "12", "0.5", or "1 and 3/16". Empty strings are parts not begun. */
export interface NumberEntry {
  readonly whole: string;
  readonly top: string;
  readonly bottom?: Denominator;
  readonly isFraction: boolean;
}

export const DENOMINATORS = [2, 4, 8, 16, 32] as const;
export type Denominator = (typeof DENOMINATORS)[number];

export type EntryKey =
  | { readonly kind: 'digit'; readonly digit: number }
  | { readonly kind: 'point' }
  | { readonly kind: 'and' }
  | { readonly kind: 'parts'; readonly bottom: Denominator }
  | { readonly kind: 'rubOut' };

export const EMPTY_ENTRY: NumberEntry = { whole: '', top: '', isFraction: false };

/** The largest number the voice can read back has six digits; so has what can be tapped. */
const MOST_DIGITS = 6;
const MOST_DECIMALS = 3;

/** Fractions are marks on a rule or parts of a turn; a pull and a weight are read in decimals. */
export function takesFractions(dimension: Dimension): boolean {
  return dimension === 'length' || dimension === 'rotation';
}

const UNITS_OF: Readonly<Record<Dimension, readonly UnitId[]>> = {
  length: ['inch', 'millimetre', 'thou', 'foot', 'metre'],
  force: ['poundForce', 'newton', 'kilogramForce'],
  mass: ['pound', 'kilogram'],
  rotation: ['turn'],
  runnage: ['footPerPound', 'metrePerKilogram'],
};

const METRIC: readonly UnitId[] = [
  'millimetre',
  'metre',
  'newton',
  'kilogramForce',
  'kilogram',
  'metrePerKilogram',
];

/** The units a number can be given in, those of the preferred system first. */
export function unitsOf(dimension: Dimension, system: 'inch' | 'metric'): readonly UnitId[] {
  const isPreferred = (unit: UnitId) => METRIC.includes(unit) === (system === 'metric');
  const units = UNITS_OF[dimension];
  return [...units.filter(isPreferred), ...units.filter((unit) => !isPreferred(unit))];
}

export const UNIT_LABELS: Readonly<Record<UnitId, string>> = {
  inch: 'inches',
  foot: 'feet',
  metre: 'metres',
  thou: 'thou',
  millimetre: 'millimetres',
  poundForce: 'pounds of pull',
  newton: 'newtons',
  kilogramForce: 'kilograms of pull',
  pound: 'pounds',
  kilogram: 'kilograms',
  turn: 'turns',
  metrePerKilogram: 'metres to the kilogram',
  footPerPound: 'feet to the pound',
};

/** The entry after a key; a key that makes no sense there changes nothing. */
export function pressKey(entry: NumberEntry, key: EntryKey): NumberEntry {
  switch (key.kind) {
    case 'digit':
      return withDigit(entry, String(key.digit));
    case 'point':
      return entry.isFraction || entry.whole.includes('.')
        ? entry
        : { ...entry, whole: `${entry.whole || '0'}.` };
    case 'and':
      return entry.isFraction || entry.whole === '' || entry.whole.includes('.')
        ? entry
        : { ...entry, isFraction: true };
    case 'parts':
      return withParts(entry, key.bottom);
    case 'rubOut':
      return withoutLast(entry);
  }
}

/** The amount tapped in, or undefined while it is not a number yet. Fractions are whole marks below one. */
export function amountOf(entry: NumberEntry): number | undefined {
  const { whole, top, bottom, isFraction } = entry;
  if (!isFraction) return whole === '' || whole.endsWith('.') ? undefined : Number(whole);
  const marks = Number(top);
  if (bottom === undefined || top === '' || marks < 1 || marks >= bottom) return undefined;
  return Number(whole) + marks / bottom;
}

/** The entry as it stands, for the display: "1 and 3/16". */
export function entryText({ whole, top, bottom, isFraction }: NumberEntry): string {
  if (!isFraction) return whole;
  const fraction = bottom === undefined ? top : `${top}/${bottom}`;
  return whole === '' ? fraction : `${whole} and ${fraction}`;
}

function withDigit(entry: NumberEntry, digit: string): NumberEntry {
  if (entry.isFraction) {
    if (entry.bottom !== undefined || entry.top.length >= 2 || (entry.top === '' && digit === '0'))
      return entry;
    return { ...entry, top: entry.top + digit };
  }
  const [whole = '', decimals] = entry.whole.split('.');
  if (decimals !== undefined) {
    return decimals.length >= MOST_DECIMALS ? entry : { ...entry, whole: entry.whole + digit };
  }
  if (whole.length >= MOST_DIGITS) return entry;
  return { ...entry, whole: whole === '0' ? digit : whole + digit };
}

/** "3" then "sixteenths" is 3/16; "1 and 3" then "sixteenths" is 1 and 3/16. A top too large for its parts is refused. */
function withParts(entry: NumberEntry, bottom: Denominator): NumberEntry {
  const top = entry.isFraction ? entry.top : entry.whole;
  if (top === '' || top.includes('.') || Number(top) < 1 || Number(top) >= bottom) return entry;
  return { whole: entry.isFraction ? entry.whole : '', top, bottom, isFraction: true };
}

function withoutLast({ whole, top, bottom, isFraction }: NumberEntry): NumberEntry {
  if (!isFraction) return { whole: whole.slice(0, -1), top, isFraction };
  if (bottom !== undefined) {
    // A lone "3/16" goes back to the 3 it was made from.
    return whole === '' ? { whole: top, top: '', isFraction: false } : { whole, top, isFraction };
  }
  return top === '' ? { whole, top, isFraction: false } : { whole, top: top.slice(0, -1), isFraction };
}
