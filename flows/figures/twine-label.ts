import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { twinePerBaleCounted } from './twine-per-bale.ts';

const LABEL_LENGTH: Quantity = { name: 'length on the label', unit: 'feet', low: 100, high: 1_000_000 };
const LABEL_STRENGTH: Quantity = { name: 'knot strength on the label', unit: 'pounds', low: 20, high: 1000 };
const EXPECTED_BALES: Quantity = {
  name: 'expected number of bales',
  unit: '',
  low: 1,
  high: 100_000,
  whole: true,
};

/** Shares of the label below which twine is short or weak. */
const HONEST_LENGTH_SHARE = 0.985;
const HONEST_STRENGTH_SHARE = 0.95;

const LABEL_RULE = {
  says: 'Twine may fall short of its label by one and a half per cent in length and five per cent in strength.',
  standing: 'published',
  source: 'ANSI/ASAE S315, Twine for Automatic Balers, as summarised by the trade',
} as const;

/** The least twine that bears out a length label, 100 to 1,000,000 ft. */
export function leastHonestLength(labelFt: number): Figure<'ft'> {
  return figure(HONEST_LENGTH_SHARE * possible(LABEL_LENGTH, labelFt), 'ft', LABEL_RULE);
}

/** The weakest twine that bears out a knot strength label, 20 to 1000 lbf. */
export function leastHonestStrength(labelLbf: number): Figure<'lbf'> {
  return figure(HONEST_STRENGTH_SHARE * possible(LABEL_STRENGTH, labelLbf), 'lbf', LABEL_RULE);
}

/** What the bale counter says about a length label. */
export interface LabelCheck {
  /** Counting cannot tell short twine from long bales, so a low count asks for the tape before it blames the twine. */
  readonly verdict: 'label borne out' | 'short twine or long bales: measure the bales first';
  /** Bales counted over bales expected. */
  readonly share: number;
  /** What each bale took if the label is right. */
  readonly twinePerBale: Figure<'ft'>;
}

/**
 * Compares bales counted on a package with bales expected from its label.
 * @param labelFt length in the whole package, 100 to 1,000,000 ft
 * @param expectedBales 1 to 100,000, see `balesPerPackage`
 * @param countedBales 1 to 100,000
 * @throws ImpossibleFigure outside those ranges
 */
export function checkLabelByCount(labelFt: number, expectedBales: number, countedBales: number): LabelCheck {
  const twinePerBale = twinePerBaleCounted(possible(LABEL_LENGTH, labelFt), countedBales);
  const share = countedBales / possible(EXPECTED_BALES, expectedBales);
  return {
    verdict:
      share >= HONEST_LENGTH_SHARE ? 'label borne out' : 'short twine or long bales: measure the bales first',
    share,
    twinePerBale: { ...twinePerBale, assumptions: [...twinePerBale.assumptions, LABEL_RULE] },
  };
}
