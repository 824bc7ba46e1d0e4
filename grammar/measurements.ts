import nlp from 'compromise';
import { type Reading, refuse } from './reading.ts';

/**
 * Spoken values: an amount and a unit ("three sixteenths of an inch"), or a count out of a total
 * ("two out of ten"). compromise reads the number words; everything it lets through is said again and
 * compared with what was heard, so a jumble such as "forty sixty two" is refused, never guessed at.
 */
export type Dimension = 'length' | 'force' | 'mass' | 'rotation' | 'runnage';

export type UnitId =
  | 'inch'
  | 'foot'
  | 'thou'
  | 'metre'
  | 'millimetre'
  | 'poundForce'
  | 'newton'
  | 'kilogramForce'
  | 'pound'
  | 'kilogram'
  | 'turn'
  | 'metrePerKilogram'
  | 'footPerPound';

export interface Measurement {
  readonly amount: number;
  readonly unit: UnitId;
}

export interface MissCount {
  readonly misses: number;
  readonly bales: number;
}

interface UnitWord {
  readonly dimension: Dimension;
  readonly unit: UnitId;
}

/** A pound or a kilo is a force where a pull is measured and a mass where a bale is weighed, so the dimension asked decides. */
const UNITS: Readonly<Record<string, readonly UnitWord[]>> = {
  inch: [{ dimension: 'length', unit: 'inch' }],
  inches: [{ dimension: 'length', unit: 'inch' }],
  foot: [{ dimension: 'length', unit: 'foot' }],
  feet: [{ dimension: 'length', unit: 'foot' }],
  thou: [{ dimension: 'length', unit: 'thou' }],
  meter: [{ dimension: 'length', unit: 'metre' }],
  meters: [{ dimension: 'length', unit: 'metre' }],
  millimeter: [{ dimension: 'length', unit: 'millimetre' }],
  millimeters: [{ dimension: 'length', unit: 'millimetre' }],
  pound: [
    { dimension: 'force', unit: 'poundForce' },
    { dimension: 'mass', unit: 'pound' },
  ],
  pounds: [
    { dimension: 'force', unit: 'poundForce' },
    { dimension: 'mass', unit: 'pound' },
  ],
  newton: [{ dimension: 'force', unit: 'newton' }],
  newtons: [{ dimension: 'force', unit: 'newton' }],
  kilo: [
    { dimension: 'force', unit: 'kilogramForce' },
    { dimension: 'mass', unit: 'kilogram' },
  ],
  kilos: [
    { dimension: 'force', unit: 'kilogramForce' },
    { dimension: 'mass', unit: 'kilogram' },
  ],
  turn: [{ dimension: 'rotation', unit: 'turn' }],
  turns: [{ dimension: 'rotation', unit: 'turn' }],
  'meters to the kilo': [{ dimension: 'runnage', unit: 'metrePerKilogram' }],
  'feet to the pound': [{ dimension: 'runnage', unit: 'footPerPound' }],
};

/** The longest first, so that "feet to the pound" is never taken for a pound. */
const UNIT_WORDS_LONGEST_FIRST = Object.keys(UNITS).toSorted((a, b) => b.length - a.length);

const MINUS = 'minus';

/** The parts a rule or a bolt is read in; a "thirtysecond" is one word so that it is never thirty and a second. */
const DENOMINATORS: Readonly<Record<string, number>> = {
  half: 2,
  quarter: 4,
  eighth: 8,
  sixteenth: 16,
  thirtysecond: 32,
};

/**
 * Reads a spoken measurement.
 * @param words lower-case words as heard, e.g. "one and three quarter turns"
 * @param dimension what was asked for; a unit of another dimension is refused
 */
export function readMeasurement(words: string, dimension: Dimension): Reading<Measurement> {
  const unitWord =
    UNIT_WORDS_LONGEST_FIRST.find((word) => words === word || words.endsWith(` ${word}`)) ?? '';
  const unit = UNITS[unitWord]?.find((entry) => entry.dimension === dimension)?.unit;
  if (!unit) return refuse('unitMissing');
  const amountWords = words
    .slice(0, words.length - unitWord.length)
    .trim()
    .replace(/ of an?$/, '')
    .replace(/ an?$/, '');
  if (amountWords.startsWith(MINUS)) return refuse('belowZero');
  const amount = readAmount(amountWords);
  if (amount === undefined) return refuse('numberUnclear');
  return { ok: true, value: { amount, unit } };
}

/**
 * Reads "two out of ten".
 * @param words lower-case words as heard; both numbers whole, the first no larger than the second
 */
export function readMissCount(words: string): Reading<MissCount> {
  const [first, second, ...rest] = words.split(' out of ');
  if (first === undefined || second === undefined || rest.length > 0) {
    return refuse('countUnclear');
  }
  if (first.startsWith(MINUS) || second.startsWith(MINUS)) return refuse('belowZero');
  const misses = readWholeNumber(first);
  const bales = readWholeNumber(second);
  if (misses === undefined || bales === undefined) return refuse('countsUnclear');
  if (bales === 0) return refuse('noBales');
  if (misses > bales) return refuse('moreMissesThanBales');
  return { ok: true, value: { misses, bales } };
}

/** Reads a whole number alone. @param words lower-case words as heard */
export function readCount(words: string): Reading<number> {
  if (words.startsWith(MINUS)) return refuse('belowZero');
  const count = readWholeNumber(words);
  return count === undefined ? refuse('numberUnclear') : { ok: true, value: count };
}

/** The largest whole number that is taken from a voice: the number reader mixes up hundreds of thousands. */
export const LARGEST_HEARD = 99_999;

/** A whole number from 0 to {@link LARGEST_HEARD} in words, or undefined where the words are not one number. */
export function readWholeNumber(words: string): number | undefined {
  const number = soleNumber(words);
  if (number === undefined || !Number.isInteger(number) || number < 0 || number > LARGEST_HEARD)
    return undefined;
  return sameWords(words, wholeNumberInWords(number)) ? number : undefined;
}

function readAmount(words: string): number | undefined {
  const whole = readWholeNumber(words);
  if (whole !== undefined) return whole;
  if (words.includes('point')) return readDecimal(words);
  const [wholePart, fractionPart] = splitFraction(words);
  const fraction = readFraction(fractionPart);
  if (fraction === undefined) return undefined;
  if (wholePart === '') return fraction;
  const base = readWholeNumber(wholePart);
  return base === undefined ? undefined : base + fraction;
}

/** Digits after "point" are spoken singly: "three point two five". */
function readDecimal(words: string): number | undefined {
  const [wholeWords, digitWords, ...rest] = words.split('point').map((part) => part.trim());
  if (wholeWords === undefined || !digitWords || rest.length > 0) return undefined;
  const whole = wholeWords === '' ? 0 : readWholeNumber(wholeWords);
  const digits = digitWords.split(' ').map(readWholeNumber);
  if (whole === undefined || digits.some((digit) => digit === undefined || digit > 9)) return undefined;
  return Number(`${whole}.${digits.join('')}`);
}

function splitFraction(words: string): [whole: string, fraction: string] {
  const joint = words.lastIndexOf(' and ');
  return joint < 0 ? ['', words] : [words.slice(0, joint), words.slice(joint + ' and '.length)];
}

function readFraction(words: string): number | undefined {
  const parts = words.split(' ');
  const denominator = DENOMINATORS[parts.pop()?.replace(/s$/, '') ?? ''];
  if (denominator === undefined) return undefined;
  const spoken = parts.join(' ');
  const numerator = ['', 'a', 'an'].includes(spoken) ? 1 : readWholeNumber(spoken);
  if (numerator === undefined || numerator < 1 || numerator >= denominator) return undefined;
  return numerator / denominator;
}

function soleNumber(words: string): number | undefined {
  const numbers: { number?: { num?: number } }[] = nlp(words).numbers().json();
  return numbers.length === 1 ? numbers[0]?.number?.num : undefined;
}

function wholeNumberInWords(number: number): string {
  return nlp(String(number)).numbers().toText().text();
}

function sameWords(heard: string, said: string): boolean {
  const plain = (text: string) =>
    text
      .replaceAll('-', ' ')
      .replace(/^a hundred/, 'one hundred')
      .replace(/^a thousand/, 'one thousand')
      .replaceAll(' and ', ' ')
      .trim();
  return plain(heard) === plain(said);
}
