import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { twinePerBale, twinePerBaleCounted, twinePerString } from '../../../flows/figures/twine-per-bale.ts';

const lengthIn = fc.double({ min: 12, max: 60, noNaN: true });
const heightIn = fc.double({ min: 8, max: 24, noNaN: true });

describe('twine on a bale', () => {
  test('is the strings times one string', () => {
    fc.assert(
      fc.property(lengthIn, heightIn, fc.integer({ min: 1, max: 3 }), (l, h, strings) => {
        const bale = { lengthIn: l, heightIn: h, strings };
        expect(twinePerBale(bale).value).toBeCloseTo(strings * twinePerString(bale).value, 10);
      }),
    );
  });

  test('an inch more of bale is two inches more of string, an inch of knot is one', () => {
    fc.assert(
      fc.property(fc.double({ min: 12, max: 59, noNaN: true }), heightIn, (l, h) => {
        const feet = twinePerString({ lengthIn: l, heightIn: h, knotAllowanceIn: 0 }).value;
        expect(twinePerString({ lengthIn: l + 1, heightIn: h }).value - feet).toBeCloseTo(2 / 12, 10);
        expect(twinePerString({ lengthIn: l, heightIn: h, knotAllowanceIn: 1 }).value - feet).toBeCloseTo(
          1 / 12,
          10,
        );
      }),
    );
  });

  test('says whether the knot was counted', () => {
    const says = (knotAllowanceIn?: number) =>
      twinePerString({
        lengthIn: 36,
        heightIn: 14,
        ...(knotAllowanceIn === undefined ? {} : { knotAllowanceIn }),
      }).assumptions.map(({ standing }) => standing);
    expect(says()).toContain('expert estimate');
    expect(says(3)).toContain('entered');
  });

  test('counting bales finds the same twine that was laid on them', () => {
    fc.assert(
      fc.property(lengthIn, heightIn, fc.integer({ min: 1, max: 5000 }), (l, h, bales) => {
        const each = twinePerBale({ lengthIn: l, heightIn: h }).value;
        expect(twinePerBaleCounted(each * bales, bales).value).toBeCloseTo(each, 9);
      }),
    );
  });

  test('no baler makes a bale of four hundred inches', () => {
    expect(() => twinePerBale({ lengthIn: 400, heightIn: 14 })).toThrow(
      'The bale length of 400 inches is outside 12 to 60 inches. Say the bale length again.',
    );
    expect(() => twinePerBale({ lengthIn: 36, heightIn: 14, strings: 5 })).toThrow('number of strings');
    expect(() => twinePerString({ lengthIn: 36, heightIn: 14, knotAllowanceIn: -1 })).toThrow(
      'knot allowance',
    );
    expect(() => twinePerBaleCounted(9000, 0)).toThrow('number of bales counted');
  });
});
