import { dayInventory } from './calendar.ts';
import type { UnitId } from './measurements.ts';
import type { Side } from './sides.ts';

/**
 * Values turned into speech. The voice is a set of recorded clips, so a value is said in fragments taken
 * from a closed set ({@link sayInventory}): a number the clips cannot say is refused here, not skipped there.
 *
 * Fragments are as long as the set can bear ("thirty-four", "two hundred", "three sixteenths"), because every
 * joint between clips is heard as a stumble and thirteen must not be put together from parts of thirty.
 */

/**
 * What is said, in order. A fragment is either a whole sentence, closed by its punctuation, or a piece of one;
 * each has one recorded clip.
 */
export type Say = readonly string[];

/** Units a value can be said in: those that can be heard, and those of counts and worked-out figures. */
export type SpokenUnit =
  | UnitId
  | 'bale'
  | 'day'
  | 'degree'
  | 'footPound'
  | 'hour'
  | 'knot'
  | 'minute'
  | 'miss'
  | 'percent'
  | 'poundPerCubicFoot'
  | 'poundPerSquareInch'
  | 'kilogramPerCubicMetre'
  | 'kilopascal'
  | 'season'
  | 'second'
  | 'stroke'
  | 'tie'
  | 'tooth';

/** How fine a fraction is said: the marks on an inch rule, or the parts a bolt is turned by. */
export type FinestPart = 2 | 4 | 8 | 16 | 32;

/** Digits said after "point". */
export type Decimals = 0 | 1 | 2 | 3;

/** How an amount that is not whole is said. Values off the grid are rounded to the nearest mark, halves upward. */
export type Precision = { readonly decimals: Decimals } | { readonly finestPart: FinestPart };

/** The largest number that has clips. */
export const LARGEST_SAID = 999_999;

interface UnitWords {
  readonly one: string;
  readonly many: string;
  /** Follows a fraction below one: "three sixteenths" "of an inch". */
  readonly partOf: string;
}

const UNIT_WORDS: Readonly<Record<SpokenUnit, UnitWords>> = {
  bale: { one: 'bale', many: 'bales', partOf: 'of a bale' },
  day: { one: 'day', many: 'days', partOf: 'of a day' },
  degree: { one: 'degree', many: 'degrees', partOf: 'of a degree' },
  foot: { one: 'foot', many: 'feet', partOf: 'of a foot' },
  footPerPound: { one: 'foot to the pound', many: 'feet to the pound', partOf: 'of a foot to the pound' },
  footPound: { one: 'foot-pound', many: 'foot-pounds', partOf: 'of a foot-pound' },
  hour: { one: 'hour', many: 'hours', partOf: 'of an hour' },
  inch: { one: 'inch', many: 'inches', partOf: 'of an inch' },
  kilogram: { one: 'kilogram', many: 'kilograms', partOf: 'of a kilogram' },
  kilogramForce: { one: 'kilogram of pull', many: 'kilograms of pull', partOf: 'of a kilogram of pull' },
  kilogramPerCubicMetre: {
    one: 'kilogram per cubic metre',
    many: 'kilograms per cubic metre',
    partOf: 'of a kilogram per cubic metre',
  },
  kilopascal: { one: 'kilopascal', many: 'kilopascals', partOf: 'of a kilopascal' },
  knot: { one: 'knot', many: 'knots', partOf: 'of a knot' },
  metre: { one: 'metre', many: 'metres', partOf: 'of a metre' },
  metrePerKilogram: {
    one: 'metre to the kilogram',
    many: 'metres to the kilogram',
    partOf: 'of a metre to the kilogram',
  },
  millimetre: { one: 'millimetre', many: 'millimetres', partOf: 'of a millimetre' },
  minute: { one: 'minute', many: 'minutes', partOf: 'of a minute' },
  miss: { one: 'miss', many: 'misses', partOf: 'of a miss' },
  newton: { one: 'newton', many: 'newtons', partOf: 'of a newton' },
  percent: { one: 'percent', many: 'percent', partOf: 'of a percent' },
  pound: { one: 'pound', many: 'pounds', partOf: 'of a pound' },
  poundForce: { one: 'pound of pull', many: 'pounds of pull', partOf: 'of a pound of pull' },
  poundPerCubicFoot: {
    one: 'pound per cubic foot',
    many: 'pounds per cubic foot',
    partOf: 'of a pound per cubic foot',
  },
  poundPerSquareInch: {
    one: 'pound per square inch',
    many: 'pounds per square inch',
    partOf: 'of a pound per square inch',
  },
  season: { one: 'season', many: 'seasons', partOf: 'of a season' },
  second: { one: 'second', many: 'seconds', partOf: 'of a second' },
  stroke: { one: 'stroke', many: 'strokes', partOf: 'of a stroke' },
  // Never "ten thousandths": spoken, that is also one ten-thousandth.
  thou: { one: 'thou', many: 'thou', partOf: 'of a thou' },
  tie: { one: 'tie', many: 'ties', partOf: 'of a tie' },
  tooth: { one: 'tooth', many: 'teeth', partOf: 'of a tooth' },
  turn: { one: 'turn', many: 'turns', partOf: 'of a turn' },
};

const SMALL_NUMBERS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;

const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

/** Index is the value, 0 to 99. */
const UNDER_HUNDRED: readonly string[] = [
  ...SMALL_NUMBERS,
  ...TENS.flatMap((ten) => [ten, ...SMALL_NUMBERS.slice(1, 10).map((unit) => `${ten}-${unit}`)]),
];

const PART_NAMES: Readonly<Record<FinestPart, string>> = {
  2: 'half',
  4: 'quarter',
  8: 'eighth',
  16: 'sixteenth',
  32: 'thirty-second',
};

const FINEST_PARTS: readonly FinestPart[] = [2, 4, 8, 16, 32];

const SIDE_WORDS: Readonly<Record<Side | 'both', { readonly full: string; readonly short: string }>> = {
  left: { full: 'on the left, seen from behind the baler', short: 'left' },
  right: { full: 'on the right, seen from behind the baler', short: 'right' },
  both: { full: 'on both sides', short: 'both' },
};

const POINT = 'point';
const TO = 'to';
const OUT_OF = 'out of';
/** Up to nine thousand is one clip; from ten on, the thousands are a number of their own. */
const THOUSAND = 'thousand';

/**
 * A whole number: 1234 is "one thousand" "two hundred" "thirty-four", 16,500 is "sixteen" "thousand" "five hundred".
 * @param value whole, 0 to {@link LARGEST_SAID}
 * @throws RangeError for anything else
 */
export function sayWhole(value: number): Say {
  if (!Number.isInteger(value) || value < 0 || value > LARGEST_SAID) {
    throw new RangeError(`The voice says whole numbers from 0 to ${LARGEST_SAID}, not ${value}.`);
  }
  if (value < 100) return [underHundred(value)];
  const thousands = Math.floor(value / 1000);
  const hundreds = Math.floor((value % 1000) / 100);
  const rest = value % 100;
  return [
    ...(thousands > 9
      ? [...sayWhole(thousands), THOUSAND]
      : thousands > 0
        ? [`${underHundred(thousands)} thousand`]
        : []),
    ...(hundreds > 0 ? [`${underHundred(hundreds)} hundred`] : []),
    ...(rest > 0 ? [underHundred(rest)] : []),
  ];
}

/**
 * The digits one by one, for reading back a number that may have been misheard: thirteen and thirty sound alike,
 * "one" "three" and "three" "zero" do not.
 * @param value whole, 0 to {@link LARGEST_SAID}
 * @throws RangeError for anything else
 */
export function sayDigits(value: number): Say {
  sayWhole(value);
  return [...String(value)].map((digit) => underHundred(Number(digit)));
}

/**
 * A decimal number, the digits after "point" one by one and no closing zeros: 2.50 is "two" "point" "five".
 * @param value 0 to {@link LARGEST_SAID}, rounded to `decimals`
 * @throws RangeError for a number out of that span, or not a number
 */
export function sayDecimal(value: number, decimals: Decimals): Say {
  const [whole = '', digits = ''] = String(rounded(value, decimals)).split('.');
  const said = sayWhole(Number(whole));
  return digits === '' ? said : [...said, POINT, ...[...digits].map((digit) => underHundred(Number(digit)))];
}

/**
 * An amount and its unit: "forty-two" "pounds of pull", "one" "and three quarters" "turns",
 * "five sixteenths" "of an inch", "zero" "point" "three" "inches".
 * @param amount 0 to {@link LARGEST_SAID} in `unit`
 * @param precision how the part below one is said; left out, the amount must be whole
 * @throws RangeError for an amount that cannot be said
 */
export function sayMeasure(amount: number, unit: SpokenUnit, precision: Precision = { decimals: 0 }): Say {
  const words = UNIT_WORDS[unit];
  if ('finestPart' in precision) {
    const { whole, part } = inParts(amount, precision.finestPart);
    if (part === undefined) return [...sayWhole(whole), whole === 1 ? words.one : words.many];
    return whole === 0 ? [part, words.partOf] : [...sayWhole(whole), `and ${part}`, words.many];
  }
  if (precision.decimals === 0 && !Number.isInteger(amount)) {
    throw new RangeError(`${amount} is not a whole number; say how many decimals, or which parts, to speak.`);
  }
  const said = sayDecimal(amount, precision.decimals);
  return [...said, rounded(amount, precision.decimals) === 1 ? words.one : words.many];
}

/**
 * A band: "forty" "to" "sixty" "pounds of pull".
 * @throws RangeError where either end cannot be said, or the ends are the wrong way round
 */
export function sayBand(low: number, high: number, unit: SpokenUnit, precision?: Precision): Say {
  if (!(low <= high)) throw new RangeError(`A band runs upward, not from ${low} to ${high}.`);
  const lower = sayMeasure(low, unit, precision);
  // A lone fraction keeps its "of an inch": "one quarter to one half inches" would be another length.
  const bare = lower.at(-1) === UNIT_WORDS[unit].partOf ? lower : lower.slice(0, -1);
  return [...bare, TO, ...sayMeasure(high, unit, precision)];
}

/**
 * A count out of a total: "two" "out of" "ten" "bales".
 * @throws RangeError where the count is more than the total, or either cannot be said
 */
export function sayOutOf(count: number, total: number, unit: SpokenUnit): Say {
  if (count > total) throw new RangeError(`${count} out of ${total} is more than there are.`);
  return [...sayWhole(count), OUT_OF, ...sayMeasure(total, unit)];
}

/**
 * A side of the baler.
 * @param form `full` says where it is seen from and belongs in the first mention; `short` is for the rest
 */
export function saySide(side: Side | 'both', form: 'full' | 'short' = 'full'): Say {
  return [SIDE_WORDS[side][form]];
}

/** Every fragment that the functions above can produce, once each. */
export function sayInventory(): readonly string[] {
  const scales = UNDER_HUNDRED.slice(1, 10).flatMap((digit) => [`${digit} hundred`, `${digit} thousand`]);
  const parts = FINEST_PARTS.flatMap((denominator) =>
    Array.from({ length: denominator / 2 }, (_, index) => partName(2 * index + 1, denominator)),
  );
  const units = Object.values(UNIT_WORDS).flatMap(({ one, many, partOf }) => [one, many, partOf]);
  const sides = Object.values(SIDE_WORDS).flatMap(({ full, short }) => [full, short]);
  const joints = [POINT, TO, OUT_OF, THOUSAND, ...parts.map((part) => `and ${part}`)];
  return [
    ...new Set([...UNDER_HUNDRED, ...scales, ...parts, ...joints, ...units, ...sides, ...dayInventory()]),
  ];
}

/** A Say as one line of text for the screen. */
export function sayText(say: Say): string {
  return say.join(' ');
}

function underHundred(value: number): string {
  const word = UNDER_HUNDRED[value];
  if (word === undefined) throw new RangeError(`There is no single word for ${value}.`);
  return word;
}

/** Rounds as a person reading the printed digits would: 1.005 is 1.01, though its binary form lies just below. */
function rounded(value: number, decimals: Decimals): number {
  // Below a millionth a number prints with an exponent of its own.
  const shifted = Math.abs(value) < 1e-6 ? 0 : Number(`${value}e${decimals}`);
  return Number(`${Math.round(shifted)}e-${decimals}`);
}

function inParts(
  amount: number,
  finest: FinestPart,
): { readonly whole: number; readonly part: string | undefined } {
  const marks = Math.round(amount * finest);
  const whole = Math.floor(marks / finest);
  let numerator = marks - whole * finest;
  let denominator: number = finest;
  if (!(numerator > 0)) return { whole, part: undefined };
  while (numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const reduced = FINEST_PARTS.find((part) => part === denominator);
  return { whole, part: reduced === undefined ? undefined : partName(numerator, reduced) };
}

/** @param numerator odd, below the denominator, so the fraction is in lowest terms */
function partName(numerator: number, denominator: FinestPart): string {
  const name = PART_NAMES[denominator];
  return `${underHundred(numerator)} ${name}${numerator === 1 ? '' : 's'}`;
}
