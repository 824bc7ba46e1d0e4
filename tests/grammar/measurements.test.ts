import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Dimension,
  LARGEST_HEARD,
  readCount,
  readMeasurement,
  readMissCount,
  readWholeNumber,
} from '../../grammar/measurements.ts';
import type { ReadingFault } from '../../grammar/reading.ts';
import { NUMBER_WORDS } from '../../grammar/value-words.ts';

const SMALL = [
  ...[
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
  ],
  ...['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** English number words, built by the rule a child learns, to check the reader against. */
function inWords(value: number, and: boolean): string {
  if (value < 20) return SMALL[value] ?? '';
  if (value < 100) return `${TENS[Math.floor(value / 10)]}${value % 10 ? ` ${SMALL[value % 10]}` : ''}`;
  const [unit, size] = value < 1000 ? ['hundred', 100] : ['thousand', 1000];
  const rest = value % size;
  const joint = rest > 0 && rest < 100 && and ? ' and ' : ' ';
  return `${inWords(Math.floor(value / size), and)} ${unit}${rest ? `${joint}${inWords(rest, and)}` : ''}`;
}

describe('whole numbers', () => {
  test('from nothing to a hundred thousand are read, with and without "and"', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 0, max: LARGEST_HEARD })),
        fc.boolean(),
        (value, and) => {
          expect(readWholeNumber(inWords(value, and))).toBe(value);
        },
      ),
      { numRuns: 400 },
    );
  });

  test.each([
    'forty sixty',
    'twenty twelve',
    'one two',
    'hundred hundred',
    'one hundred thousand',
    'and',
    'of',
    '',
  ])('"%s" is no number', (words) => {
    expect(readWholeNumber(words)).toBeUndefined();
  });

  test('any jumble of number words is either refused or is the number it says', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...NUMBER_WORDS), { minLength: 1, maxLength: 5 }), (words) => {
        const said = words.join(' ');
        const value = readWholeNumber(said);
        if (value === undefined) return;
        const plain = said.replace(/^a (hundred|thousand)/, 'one $1').replaceAll(' and ', ' ');
        expect(plain).toBe(inWords(value, false));
      }),
      { numRuns: 300 },
    );
  });
});

describe('measurements', () => {
  test.each<[words: string, dimension: Dimension, amount: number, unit: string]>([
    ['three sixteenths of an inch', 'length', 3 / 16, 'inch'],
    ['a quarter of an inch', 'length', 0.25, 'inch'],
    ['half an inch', 'length', 0.5, 'inch'],
    ['one thirtysecond of an inch', 'length', 1 / 32, 'inch'],
    ['one and a half inches', 'length', 1.5, 'inch'],
    ['two and five eighths inches', 'length', 2.625, 'inch'],
    ['twelve thou', 'length', 12, 'thou'],
    ['three point two five millimeters', 'length', 3.25, 'millimetre'],
    ['point five inches', 'length', 0.5, 'inch'],
    ['forty two pounds', 'force', 42, 'poundForce'],
    ['forty two pounds', 'mass', 42, 'pound'],
    ['one hundred and twenty newtons', 'force', 120, 'newton'],
    ['one and three quarter turns', 'rotation', 1.75, 'turn'],
    ['nine thousand feet', 'length', 9000, 'foot'],
    ['three thousand six hundred meters', 'length', 3600, 'metre'],
    ['twenty five kilos', 'force', 25, 'kilogramForce'],
    ['twenty five kilos', 'mass', 25, 'kilogram'],
    ['four hundred meters to the kilo', 'runnage', 400, 'metrePerKilogram'],
    ['two hundred twenty five feet to the pound', 'runnage', 225, 'footPerPound'],
    ['zero inches', 'length', 0, 'inch'],
  ])('"%s" as a %s', (words, dimension, amount, unit) => {
    expect(readMeasurement(words, dimension)).toEqual({ ok: true, value: { amount, unit } });
  });

  test('every fraction of the rule is read at its own value', () => {
    const parts = [
      [2, 'half'],
      [4, 'quarter'],
      [8, 'eighth'],
      [16, 'sixteenth'],
      [32, 'thirtysecond'],
    ] as const;
    for (const [denominator, name] of parts) {
      for (let numerator = 1; numerator < denominator; numerator += 1) {
        const words = `${inWords(numerator, false)} ${name}${numerator > 1 ? 's' : ''} of an inch`;
        expect(readMeasurement(words, 'length'), words).toEqual({
          ok: true,
          value: { amount: numerator / denominator, unit: 'inch' },
        });
      }
    }
  });

  test.each<[words: string, dimension: Dimension, why: ReadingFault]>([
    ['forty two', 'force', 'unitMissing'],
    ['forty two inches', 'force', 'unitMissing'],
    ['', 'force', 'unitMissing'],
    ['pounds', 'force', 'numberUnclear'],
    ['forty sixty two pounds', 'force', 'numberUnclear'],
    ['nine eighths of an inch', 'length', 'numberUnclear'],
    ['three point twelve inches', 'length', 'numberUnclear'],
    ['three point five point two inches', 'length', 'numberUnclear'],
    ['minus six inches', 'length', 'belowZero'],
    ['minus a quarter of an inch', 'length', 'belowZero'],
    ['six minus two inches', 'length', 'numberUnclear'],
    ['half past six inches', 'length', 'numberUnclear'],
    ['two hundred feet to the pound', 'length', 'unitMissing'],
    ['two hundred feet', 'runnage', 'unitMissing'],
  ])('"%s" as a %s is refused', (words, dimension, why) => {
    expect(readMeasurement(words, dimension)).toEqual({ ok: false, why });
  });
});

describe('misses out of bales', () => {
  test('are read for any count no larger than the total', () => {
    const counts = fc
      .integer({ min: 1, max: 9999 })
      .chain((bales) => fc.tuple(fc.integer({ min: 0, max: bales }), fc.constant(bales)));
    fc.assert(
      fc.property(counts, ([misses, bales]) => {
        expect(readMissCount(`${inWords(misses, true)} out of ${inWords(bales, true)}`)).toEqual({
          ok: true,
          value: { misses, bales },
        });
      }),
    );
  });

  test.each<[words: string, why: ReadingFault]>([
    ['minus two out of ten', 'belowZero'],
    ['two out of minus ten', 'belowZero'],
    ['ten out of two', 'moreMissesThanBales'],
    ['zero out of zero', 'noBales'],
    ['half out of ten', 'countsUnclear'],
    ['two in ten', 'countUnclear'],
    ['two out of ten out of twenty', 'countUnclear'],
  ])('"%s" is refused', (words, why) => {
    expect(readMissCount(words)).toEqual({ ok: false, why });
  });
});

test.each<[words: string, why: ReadingFault]>([
  ['minus four', 'belowZero'],
  ['half', 'numberUnclear'],
  ['four pounds', 'numberUnclear'],
])('"%s" as a count is refused', (words, why) => {
  expect(readCount(words)).toEqual({ ok: false, why });
});
