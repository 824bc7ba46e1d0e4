import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

export const NOTCHES: Quantity = { name: 'number of disc notches', unit: '', low: 2, high: 12, whole: true };
export const TRIPS: Quantity = { name: 'number of trips', unit: '', low: 1, high: 100, whole: true };

/**
 * Angle of the twine disc in one knotter cycle: 360 over notches, one notch a cycle.
 * @param notches whole number, 2 to 12; four are usual
 * @throws ImpossibleFigure outside that range
 */
export function discStep(notches: number): Figure<'deg'> {
  return figure(360 / possible(NOTCHES, notches), 'deg', {
    says: 'The disc moves one notch a tie.',
    standing: 'common practice, no source',
  });
}

/**
 * What a painted notch says: it is back after exactly as many trips as the disc has notches, or the drive slips.
 * @param tripsToReturn whole trips until the painted notch stood where it began, 1 to 100
 * @throws ImpossibleFigure outside those ranges
 */
export function discDrive(notches: number, tripsToReturn: number): 'holds' | 'slips' {
  return possible(TRIPS, tripsToReturn) === possible(NOTCHES, notches) ? 'holds' : 'slips';
}
