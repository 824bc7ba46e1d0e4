import type { Dimension } from './measurements.ts';
import { BETWEEN_COUNTS, DIGITS, FRACTIONS, TEENS, TENS, TWO_WORD_NUMBERS } from './value-words.ts';

/**
 * Values as they are said most, number and unit together, each heard as one word: "forty pounds", "one and a half
 * turns". Put together from short words, a value pays for each of them and its sounds are not fitted across them, so
 * that "forty pounds" came back as "forty five". What is said seldom is still put together from value-words.ts.
 */

const BELOW_HUNDRED: readonly string[] = [...DIGITS, ...TEENS, ...TENS, ...TWO_WORD_NUMBERS];
const HUNDREDS = ['a', ...DIGITS].map((digit) => `${digit} hundred`);
const THOUSANDS = ['a', ...DIGITS, ...TEENS, 'twenty'].map((number) => `${number} thousand`);

/** Whole numbers that have parts beside them: a rule's inches and a bolt's turns do not go further. */
const UP_TO_TWELVE = [...DIGITS, 'ten', 'eleven', 'twelve'];
const UP_TO_SIX = UP_TO_TWELVE.slice(0, 6);

const QUARTERS = ['a half', 'a quarter', 'three quarters'];
const EIGHTHS = ['an eighth', 'three eighths', 'five eighths', 'seven eighths'];

/** Numbers that are said alone or begin longer ones: "three hundred and" goes on with "fifty pounds". */
export const ROUND_NUMBERS: readonly string[] = [
  ...HUNDREDS,
  ...HUNDREDS.map((hundred) => `${hundred} and`),
  ...THOUSANDS,
];

const ROUND_BALES = [
  ...['ten', 'twelve', 'fifteen', 'twenty', 'twenty five', 'thirty', 'forty', 'fifty'],
  ...['sixty', 'eighty', 'a hundred', 'two hundred'],
];

/** Misses over bales. Over other numbers of bales they are put together: "three out of" goes on with "eight". */
export const MISS_COUNTS: readonly string[] = [
  ...[...DIGITS, ...TEENS].map((misses) => `${misses} ${BETWEEN_COUNTS}`),
  ...ROUND_BALES.flatMap((bales) =>
    [...DIGITS, 'ten'].map((misses) => `${misses} ${BETWEEN_COUNTS} ${bales}`),
  ),
];

/** The values of each dimension. */
export const WHOLE_VALUES: Readonly<Record<Dimension, readonly string[]>> = {
  length: [
    ...partsOf('an inch'),
    ...withParts(UP_TO_TWELVE, QUARTERS, 'inches'),
    ...withParts(UP_TO_SIX, EIGHTHS, 'inches'),
    ...counted(BELOW_HUNDRED, 'inch', 'inches'),
    ...counted(BELOW_HUNDRED, 'millimeter', 'millimeters'),
    ...counted([...UP_TO_TWELVE, ...TENS], 'thou', 'thou'),
    ...counted([...UP_TO_TWELVE, ...TENS, ...HUNDREDS, ...THOUSANDS], 'foot', 'feet'),
    ...counted([...UP_TO_TWELVE, ...TENS, ...HUNDREDS, ...THOUSANDS], 'meter', 'meters'),
  ],
  force: weighed(['pound', 'newton', 'kilo']),
  mass: weighed(['pound', 'kilo']),
  rotation: [
    ...partsOf('a turn'),
    ...withParts(UP_TO_TWELVE, QUARTERS, 'turns'),
    ...counted(UP_TO_TWELVE, 'turn', 'turns'),
  ],
  // Its units are long enough to be told apart from the numbers before them.
  runnage: [],
};

function counted(numbers: readonly string[], one: string, many: string): string[] {
  return numbers.map((number) => `${number} ${number === 'one' ? one : many}`);
}

function weighed(units: readonly string[]): string[] {
  return units.flatMap((unit) => counted([...BELOW_HUNDRED, ...HUNDREDS], unit, `${unit}s`));
}

function partsOf(one: string): string[] {
  const ofOne = FRACTIONS.filter((fraction) => fraction.includes(' ')).map((part) => `${part} of ${one}`);
  return [...ofOne, `half ${one}`];
}

function withParts(wholes: readonly string[], parts: readonly string[], many: string): string[] {
  return wholes.flatMap((whole) => parts.map((part) => `${whole} and ${part} ${many}`));
}
