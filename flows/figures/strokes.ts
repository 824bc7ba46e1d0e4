import { BALE_LENGTH, BALE_WEIGHT, STROKES_PER_MINUTE } from './bale-quantities.ts';
import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { convert } from './units.ts';

/** A few strokes to a bale is a heavy swath, forty a very thin one. */
export const STROKES_PER_BALE: Quantity = { name: 'number of strokes a bale', unit: '', low: 3, high: 60 };

/**
 * Flake: hay added by one stroke, bale length over strokes.
 * @param baleLengthIn 12 to 60 in
 * @param strokesPerBale 3 to 60
 * @throws ImpossibleFigure outside those ranges
 */
export function flake(baleLengthIn: number, strokesPerBale: number): Figure<'in'> {
  return figure(possible(BALE_LENGTH, baleLengthIn) / possible(STROKES_PER_BALE, strokesPerBale), 'in', {
    says: 'All strokes add the same.',
    standing: 'derived',
  });
}

/**
 * Scatter of bale length that no setting can remove. The bale can only end after a whole stroke, so its length
 * falls evenly within one flake: standard deviation flake / sqrt(12).
 * @throws ImpossibleFigure as `flake`
 */
export function lengthScatter(baleLengthIn: number, strokesPerBale: number): Figure<'in'> {
  return figure(flake(baleLengthIn, strokesPerBale).value / Math.sqrt(12), 'in', {
    says: 'The trip can come at any moment of a stroke with equal chance.',
    standing: 'derived',
  });
}

/**
 * Bales an hour while hay keeps coming: 60 times strokes a minute over strokes a bale.
 * @param strokesPerMinute 20 to 150
 * @param strokesPerBale 3 to 60
 * @throws ImpossibleFigure outside those ranges
 */
export function balesPerHour(strokesPerMinute: number, strokesPerBale: number): Figure<'bales/h'> {
  const bales =
    (60 * possible(STROKES_PER_MINUTE, strokesPerMinute)) / possible(STROKES_PER_BALE, strokesPerBale);
  return figure(bales, 'bales/h', { says: 'No stops and no turns at the headland.', standing: 'derived' });
}

/**
 * Time from one tie to the next.
 * @throws ImpossibleFigure as `balesPerHour`
 */
export function secondsPerBale(strokesPerMinute: number, strokesPerBale: number): Figure<'s'> {
  const rate = balesPerHour(strokesPerMinute, strokesPerBale);
  return figure(3600 / rate.value, 's', ...rate.assumptions);
}

/**
 * Hay through the chamber in tonnes an hour.
 * @param baleWeightLb 5 to 300 lb
 * @throws ImpossibleFigure outside that range, or as `balesPerHour`
 */
export function throughput(
  baleWeightLb: number,
  strokesPerMinute: number,
  strokesPerBale: number,
): Figure<'tonne/h'> {
  const rate = balesPerHour(strokesPerMinute, strokesPerBale);
  const poundsPerHour = possible(BALE_WEIGHT, baleWeightLb) * rate.value;
  return figure(convert('mass', poundsPerHour, 'lb', 'tonne'), 'tonne/h', ...rate.assumptions);
}
