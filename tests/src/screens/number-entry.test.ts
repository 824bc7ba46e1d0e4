import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_SAID, sayMeasure } from '../../../grammar/say.ts';
import {
  amountOf,
  DENOMINATORS,
  EMPTY_ENTRY,
  type EntryKey,
  entryText,
  type NumberEntry,
  pressKey,
  unitsOf,
} from '../../../src/screens/number-entry.ts';

const KEYS: Readonly<Record<string, EntryKey>> = {
  '.': { kind: 'point' },
  '&': { kind: 'and' },
  '<': { kind: 'rubOut' },
  ...Object.fromEntries(DENOMINATORS.map((bottom) => [`/${bottom}`, { kind: 'parts', bottom }])),
};

/** Keys as a person would write them down: "1 & 3 /16" is one and three sixteenths. */
function tapped(keys: string): NumberEntry {
  return keys
    .split(' ')
    .flatMap(
      (key) => KEYS[key] ?? [...key].map((digit): EntryKey => ({ kind: 'digit', digit: Number(digit) })),
    )
    .reduce(pressKey, EMPTY_ENTRY);
}

const anyKey: fc.Arbitrary<EntryKey> = fc.oneof(
  fc.integer({ min: 0, max: 9 }).map((digit) => ({ kind: 'digit', digit }) as const),
  fc.constantFrom<EntryKey>(...Object.values(KEYS)),
);

describe('a number tapped in', () => {
  it.each([
    ['12', 12, '12'],
    ['0', 0, '0'],
    ['007', 7, '7'],
    ['0 . 5', 0.5, '0.5'],
    ['. 25', 0.25, '0.25'],
    ['3 /16', 0.1875, '3/16'],
    ['1 & 3 /16', 1.1875, '1 and 3/16'],
    ['1 & 1 /2', 1.5, '1 and 1/2'],
    ['1234567', 123456, '123456'],
    ['1 . 2345', 1.234, '1.234'],
    ['1 & 3 /16 < < < 2', 12, '12'],
  ])('%s is %d, shown as %s', (keys, amount, shown) => {
    expect(amountOf(tapped(keys))).toBe(amount);
    expect(entryText(tapped(keys))).toBe(shown);
  });

  it.each([
    ['nothing', EMPTY_ENTRY],
    ['a point with nothing after it', tapped('3 .')],
    ['a fraction without its parts', tapped('1 & 3')],
    ['a whole with "and" and nothing after it', tapped('1 &')],
  ])('%s is not a number yet', (_, entry) => {
    expect(amountOf(entry)).toBeUndefined();
  });

  it('refuses a top that is not below its parts', () => {
    expect(amountOf(tapped('5 /4'))).toBe(5);
    expect(amountOf(tapped('1 & 4 /4'))).toBeUndefined();
  });

  it('is always one the voice can read back, whatever the keys', () => {
    fc.assert(
      fc.property(fc.array(anyKey, { maxLength: 12 }), (keys) => {
        const amount = amountOf(keys.reduce(pressKey, EMPTY_ENTRY));
        if (amount === undefined) return;
        expect(amount).toBeGreaterThanOrEqual(0);
        expect(amount).toBeLessThanOrEqual(LARGEST_SAID + 1);
        if (amount <= LARGEST_SAID)
          expect(sayMeasure(amount, 'inch', { decimals: 3 }).length).toBeGreaterThan(0);
      }),
    );
  });

  it('is rubbed out to nothing, whatever was tapped', () => {
    fc.assert(
      fc.property(fc.array(anyKey, { maxLength: 12 }), (keys) => {
        let entry = keys.reduce(pressKey, EMPTY_ENTRY);
        for (let taps = 0; taps < 16; taps += 1) entry = pressKey(entry, { kind: 'rubOut' });
        expect(entryText(entry)).toBe('');
        expect(entry).toEqual(EMPTY_ENTRY);
      }),
    );
  });
});

describe('the units offered', () => {
  it('are the same ones in both systems, the preferred first', () => {
    for (const dimension of ['length', 'force', 'mass', 'rotation'] as const) {
      const [inch, metric] = [unitsOf(dimension, 'inch'), unitsOf(dimension, 'metric')];
      expect([...inch].sort()).toEqual([...metric].sort());
    }
    expect(unitsOf('length', 'metric')[0]).toBe('millimetre');
    expect(unitsOf('force', 'metric')[0]).toBe('newton');
    expect(unitsOf('force', 'inch')[0]).toBe('poundForce');
  });
});
