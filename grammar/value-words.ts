import { DAY_PHRASES } from './calendar.ts';

/**
 * The words of spoken values. Words that are always said together are kept together, because the recogniser hears
 * a long word far better than the short ones it is made of: "out of", "twenty two", "three sixteenths".
 */
export const DIGITS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
export const TEENS = [
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
export const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

/** Single words that join into numbers, as the pronouncing dictionary spells them. */
export const NUMBER_WORDS = [
  'zero',
  ...DIGITS,
  ...TEENS,
  ...TENS,
  'hundred',
  'thousand',
  'and',
  'a',
  'point',
  // Heard so that it can be questioned: without it "minus six" comes out as six.
  'minus',
] as const;

/** The numbers between the tens. */
export const TWO_WORD_NUMBERS: readonly string[] = TENS.flatMap((ten) =>
  DIGITS.map((digit) => `${ten} ${digit}`),
);

/** Parts of an inch or a turn, in lowest terms; a "thirtysecond" is one word so that it is never thirty and a second. */
export const FRACTIONS: readonly string[] = [
  'half',
  'one half',
  'a half',
  'quarter',
  'a quarter',
  'one quarter',
  'three quarters',
  'an eighth',
  'a sixteenth',
  ...oddParts(['one', 'three', 'five', 'seven'], 'eighth'),
  ...oddParts(['one', 'three', 'five', 'seven', 'nine', 'eleven', 'thirteen', 'fifteen'], 'sixteenth'),
  ...oddParts(['one', 'three', 'five', 'seven', 'nine', 'eleven', 'thirteen', 'fifteen'], 'thirtysecond'),
];

/** What stands between the numbers of a value. */
export const BETWEEN_PARTS = [
  'and a half',
  'and a quarter',
  'and three quarters',
  'of an inch',
  'of a turn',
  'a turn',
  'an inch',
] as const;
export const BETWEEN_COUNTS = 'out of';

/** Unit words a person may say; measurements.ts knows what each stands for. */
export const UNIT_WORDS = [
  'inch',
  'inches',
  'foot',
  'feet',
  'thou',
  'meter',
  'meters',
  'millimeter',
  'millimeters',
  'pound',
  'pounds',
  'newton',
  'newtons',
  'kilo',
  'kilos',
  'turn',
  'turns',
] as const;

/** Length of twine in its weight, as labels give it. */
export const RUNNAGE_UNITS = ['meters to the kilo', 'feet to the pound'] as const;

/** Every value phrase of more than one word: each becomes one word of the recogniser's graph. */
export const VALUE_PHRASES: readonly string[] = [
  ...TWO_WORD_NUMBERS,
  ...FRACTIONS.filter((fraction) => fraction.includes(' ')),
  ...BETWEEN_PARTS,
  BETWEEN_COUNTS,
  ...RUNNAGE_UNITS,
  ...DAY_PHRASES,
];

/** Every value word that stays an ordinary word of the graph. */
export const VALUE_WORDS: readonly string[] = [
  ...NUMBER_WORDS,
  ...FRACTIONS.filter((fraction) => !fraction.includes(' ')),
  ...UNIT_WORDS,
];

function oddParts(numerators: readonly string[], part: string): string[] {
  return numerators.map((numerator) => `${numerator} ${numerator === 'one' ? part : `${part}s`}`);
}
