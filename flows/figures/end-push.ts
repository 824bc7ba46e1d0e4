import { BALE_HEIGHT, BALE_WIDTH, STRINGS } from './bale-quantities.ts';
import { type Assumption, type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

export const KNOT_STRENGTH: Quantity = { name: 'knot strength', unit: 'pounds', low: 20, high: 1000 };
export const TENSILE_STRENGTH: Quantity = {
  name: 'straight pull strength',
  unit: 'pounds',
  low: 20,
  high: 2000,
};
const END_PUSH: Quantity = { name: 'end push', unit: 'pounds', low: 0, high: 10_000 };

const FOR_COMPARISON: Assumption = {
  says: 'Each string is a loop of two legs that share its load. Compare with it; it is no rating.',
  standing: 'derived',
};

/**
 * End push of the bale that the knots can hold when all strings pull alike: 2 legs times strings times knot strength.
 * @param knotStrengthLbf 20 to 1000 lbf
 * @param strings 1 to 3
 * @throws ImpossibleFigure outside those ranges
 */
export function endPushHeld(knotStrengthLbf: number, strings = 2): Figure<'lbf'> {
  return figure(
    2 * possible(STRINGS, strings) * possible(KNOT_STRENGTH, knotStrengthLbf),
    'lbf',
    FOR_COMPARISON,
  );
}

/**
 * End push at which the tightest string gives way when it carries `share` of the load: 2 times knot strength over
 * the share. An even share gives `endPushHeld`.
 * @param share load of the tightest string, from 1 / strings to 1
 * @throws ImpossibleFigure outside those ranges
 */
export function endPushHeldUnevenly(knotStrengthLbf: number, share: number, strings = 2): Figure<'lbf'> {
  const even = 1 / possible(STRINGS, strings);
  possible({ name: 'share of the tightest string', unit: '', low: even, high: 1 }, share);
  return figure((2 * possible(KNOT_STRENGTH, knotStrengthLbf)) / share, 'lbf', FOR_COMPARISON);
}

/**
 * Pressure of an end push spread over the end of the bale.
 * @param heightIn 8 to 24 in
 * @param widthIn 8 to 30 in
 * @throws ImpossibleFigure outside those ranges
 */
export function endPressure(endPushLbf: number, heightIn: number, widthIn: number): Figure<'psi'> {
  const areaIn2 = possible(BALE_HEIGHT, heightIn) * possible(BALE_WIDTH, widthIn);
  return figure(possible(END_PUSH, endPushLbf) / areaIn2, 'psi', FOR_COMPARISON);
}

/**
 * Strength left by a knot: knot strength over straight pull strength. From memory 0.5 to 0.65; not checked.
 * @param knotStrengthLbf 20 to 1000 lbf
 * @param tensileStrengthLbf 20 to 2000 lbf and no less than the knot
 * @throws ImpossibleFigure outside those ranges
 */
export function knotRatio(knotStrengthLbf: number, tensileStrengthLbf: number): Figure<'share'> {
  const tensile = possible(TENSILE_STRENGTH, tensileStrengthLbf);
  possible({ ...KNOT_STRENGTH, high: tensile }, knotStrengthLbf);
  return figure(knotStrengthLbf / tensile, 'share', {
    says: 'A knot usually keeps between half and two thirds of the straight pull.',
    standing: 'from memory',
  });
}
