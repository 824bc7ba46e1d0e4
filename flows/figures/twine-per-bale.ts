import { BALE_HEIGHT, BALE_LENGTH, STRINGS } from './bale-quantities.ts';
import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { convert } from './units.ts';

const KNOT_ALLOWANCE: Quantity = { name: 'knot allowance', unit: 'inches', low: 0, high: 12 };
export const BALES_COUNTED: Quantity = {
  name: 'number of bales counted',
  unit: '',
  low: 1,
  high: 100_000,
  whole: true,
};
const TWINE_USED: Quantity = { name: 'length of twine used', unit: 'feet', low: 1, high: 1_000_000 };

/** A bale as the string sees it. */
export interface StrungBale {
  readonly lengthIn: number;
  readonly heightIn: number;
  /** Strings round the bale, 1 to 3; 2 where left out. */
  readonly strings?: number;
  /** Extra twine a string for knot and tails, 0 to 12 inches; none where left out. */
  readonly knotAllowanceIn?: number;
}

/**
 * Twine in one string: 2 (length + height) + knot allowance.
 * @throws ImpossibleFigure for a length outside 12 to 60 in, a height outside 8 to 24 in or an allowance outside
 * 0 to 12 in
 */
export function twinePerString(bale: StrungBale): Figure<'ft'> {
  const roundIn = 2 * (possible(BALE_LENGTH, bale.lengthIn) + possible(BALE_HEIGHT, bale.heightIn));
  const knotIn = possible(KNOT_ALLOWANCE, bale.knotAllowanceIn ?? 0);
  return figure(
    convert('length', roundIn + knotIn, 'in', 'ft'),
    'ft',
    { says: 'The string lies on the bale and does not bed in.', standing: 'derived' },
    bale.knotAllowanceIn === undefined
      ? {
          says: 'Knot and tails are left out; they take up to six inches a string.',
          standing: 'expert estimate',
        }
      : { says: 'Knot and tails are as you gave them.', standing: 'entered' },
  );
}

/**
 * Twine on one bale: strings times the twine in one string.
 * @throws ImpossibleFigure as `twinePerString`, and for strings outside 1 to 3
 */
export function twinePerBale(bale: StrungBale): Figure<'ft'> {
  const string = twinePerString(bale);
  return figure(possible(STRINGS, bale.strings ?? 2) * string.value, 'ft', ...string.assumptions);
}

/**
 * Twine a bale from the counter: twine used up divided by bales counted. Better than the tape, because it holds
 * the bedding-in, the knots and the bale lengths as they really were.
 * @param usedFt 1 to 1,000,000 ft
 * @param balesCounted whole number, 1 to 100,000
 * @throws ImpossibleFigure outside those ranges
 */
export function twinePerBaleCounted(usedFt: number, balesCounted: number): Figure<'ft'> {
  return figure(possible(TWINE_USED, usedFt) / possible(BALES_COUNTED, balesCounted), 'ft', {
    says: 'The counter was right and the package held the length given.',
    standing: 'entered',
  });
}
