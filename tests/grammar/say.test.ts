import nlp from 'compromise';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_HEARD, readMeasurement, readWholeNumber } from '../../grammar/measurements.ts';
import {
  type Decimals,
  type FinestPart,
  LARGEST_SAID,
  type Say,
  type SpokenUnit,
  sayBand,
  sayDecimal,
  sayDigits,
  sayInventory,
  sayMeasure,
  sayOutOf,
  saySide,
  sayText,
  sayWhole,
} from '../../grammar/say.ts';

const INVENTORY = new Set(sayInventory());
const UNITS: readonly SpokenUnit[] = [
  'bale',
  'day',
  'degree',
  'foot',
  'footPerPound',
  'footPound',
  'hour',
  'inch',
  'kilogram',
  'kilogramForce',
  'kilogramPerCubicMetre',
  'kilopascal',
  'knot',
  'metre',
  'metrePerKilogram',
  'millimetre',
  'minute',
  'miss',
  'newton',
  'percent',
  'pound',
  'poundForce',
  'poundPerCubicFoot',
  'poundPerSquareInch',
  'season',
  'second',
  'stroke',
  'thou',
  'tie',
  'tooth',
  'turn',
];

const whole = fc.integer({ min: 0, max: LARGEST_SAID });
const decimals = fc.constantFrom<Decimals>(0, 1, 2, 3);
const finestPart = fc.constantFrom<FinestPart>(2, 4, 8, 16, 32);
const unit = fc.constantFrom(...UNITS);
/** What the ears can check. */
const heard = fc.integer({ min: 0, max: LARGEST_HEARD });
const amount = fc.double({ min: 0, max: LARGEST_HEARD - 1, noNaN: true });

/** The words as the recogniser would spell them, so that what the mouth says the ears' own reader can check. */
function asHeard(say: Say): string {
  return sayText(say)
    .replaceAll('thirty-second', 'thirtysecond')
    .replaceAll('-', ' ')
    .replaceAll('millimetre', 'millimeter')
    .replaceAll('kilogram', 'kilo')
    .replace(/pounds? of pull/, 'pounds');
}

function inInventory(say: Say): boolean {
  return say.length > 0 && say.every((fragment) => INVENTORY.has(fragment));
}

describe('whole numbers', () => {
  // compromise is a published English number parser: https://github.com/spencermountain/compromise
  it('say what an independent parser reads back', { timeout: 30_000 }, () => {
    for (let value = 0; value <= LARGEST_SAID; value += value < 300 ? 1 : value < 10_000 ? 97 : 9_901) {
      const words = sayText(sayWhole(value));
      const read: { number: { num: number } }[] = nlp(words).numbers().json();
      expect(
        read.map(({ number }) => number.num),
        words,
      ).toEqual([value]);
    }
  });

  it('say what the ears take for the same number', { timeout: 30_000 }, () => {
    fc.assert(fc.property(heard, (value) => readWholeNumber(asHeard(sayWhole(value))) === value));
  });

  it('are different words for different numbers', () => {
    // Above a thousand a number is its thousands, then its rest, so that the first thousand thousands decide.
    const upTo = 20_000;
    const all = new Set(Array.from({ length: upTo + 1 }, (_, value) => sayText(sayWhole(value))));
    expect(all.size).toBe(upTo + 1);
  });

  it('refuse what has no clips, in words', () => {
    for (const value of [-1, 0.5, LARGEST_SAID + 1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => sayWhole(value)).toThrow(/whole numbers from 0 to 999999/);
    }
  });

  it('read back digit by digit without a teen or a ten', () => {
    fc.assert(
      fc.property(whole, (value) => {
        const say = sayDigits(value);
        const digits = say.map((fragment) => readWholeNumber(fragment));
        return digits.join('') === String(value);
      }),
    );
  });
});

describe('decimals', () => {
  it('are read by the ears as the value rounded to the digits asked for', () => {
    fc.assert(
      fc.property(amount, decimals, (value, digits) => {
        const read = readMeasurement(`${asHeard(sayDecimal(value, digits))} inches`, 'length');
        return read.ok && Math.abs(read.value.amount - value) <= 0.5 * 10 ** -digits * (1 + 1e-9);
      }),
    );
  });

  it('round the digits a person reads, not their binary form', () => {
    expect(sayText(sayDecimal(1.005, 2))).toBe('one point zero one');
    expect(sayText(sayDecimal(2.5, 3))).toBe('two point five');
    expect(sayText(sayDecimal(1e-9, 3))).toBe('zero');
    expect(sayText(sayDecimal(0.9996, 3))).toBe('one');
  });
});

describe('measures', () => {
  it('with parts of an inch are read by the ears as the nearest mark of the rule', () => {
    fc.assert(
      fc.property(amount, finestPart, (value, finest) => {
        const read = readMeasurement(asHeard(sayMeasure(value, 'inch', { finestPart: finest })), 'length');
        return read.ok && Math.abs(read.value.amount - value) <= 0.5 / finest + 1e-12;
      }),
    );
  });

  it('say fractions in lowest terms', () => {
    expect(sayMeasure(0.5, 'inch', { finestPart: 32 })).toEqual(['one half', 'of an inch']);
    expect(sayMeasure(2 + 3 / 16, 'inch', { finestPart: 16 })).toEqual([
      'two',
      'and three sixteenths',
      'inches',
    ]);
    expect(sayMeasure(1.75, 'turn', { finestPart: 4 })).toEqual(['one', 'and three quarters', 'turns']);
    expect(sayMeasure(31 / 32, 'inch', { finestPart: 32 })).toEqual([
      'thirty-one thirty-seconds',
      'of an inch',
    ]);
  });

  it('use the singular for one and only for one', () => {
    for (const name of UNITS) {
      const [one, two] = [sayMeasure(1, name).at(-1), sayMeasure(2, name).at(-1)];
      expect(one === two, name).toBe(name === 'percent' || name === 'thou');
      expect(sayMeasure(1.2, name, { decimals: 1 }).at(-1)).toBe(two);
      expect(sayMeasure(0, name).at(-1)).toBe(two);
      expect(sayMeasure(1, name, { finestPart: 16 })).toEqual(['one', one]);
      expect(sayMeasure(3, name, { finestPart: 16 })).toEqual(['three', two]);
    }
  });

  it('do not drop a part that was not asked for', () => {
    expect(() => sayMeasure(2.5, 'pound')).toThrow(/2.5 is not a whole number/);
  });
});

describe('bands and counts', () => {
  it('keep both ends in their own unit', () => {
    expect(sayText(sayBand(40, 60, 'poundForce'))).toBe('forty to sixty pounds of pull');
    expect(sayText(sayBand(0.25, 0.5, 'inch', { finestPart: 4 }))).toBe(
      'one quarter of an inch to one half of an inch',
    );
    expect(() => sayBand(60, 40, 'pound')).toThrow(/upward/);
    expect(() => sayBand(Number.NaN, 40, 'pound')).toThrow(RangeError);
  });

  it('never claim more misses than ties', () => {
    expect(sayText(sayOutOf(2, 10, 'bale'))).toBe('two out of ten bales');
    expect(() => sayOutOf(11, 10, 'bale')).toThrow(/more than there are/);
  });
});

describe('the inventory', () => {
  it('holds every fragment that can be said', () => {
    fc.assert(
      fc.property(amount, amount, unit, finestPart, decimals, (a, b, name, finest, digits) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        return [
          sayWhole(Math.floor(a)),
          sayDigits(Math.floor(a)),
          sayDecimal(a, digits),
          sayMeasure(a, name, { finestPart: finest }),
          sayMeasure(a % 2, name, { finestPart: finest }),
          sayMeasure(b, name, { decimals: digits === 0 ? 1 : digits }),
          sayBand(low, high, name, { finestPart: finest }),
          sayOutOf(Math.floor(low), Math.floor(high), name),
        ].every(inInventory);
      }),
    );
    for (const side of ['left', 'right', 'both'] as const) {
      for (const form of ['full', 'short'] as const) expect(inInventory(saySide(side, form))).toBe(true);
    }
  });

  it('holds nothing twice and nothing that needs a clip of silence', () => {
    const list = sayInventory();
    expect(INVENTORY.size).toBe(list.length);
    expect(list.filter((fragment) => !/^[A-Za-z][a-z, -]*$/.test(fragment))).toEqual([]);
  });
});
