import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { convert } from './units.ts';

export const PITCH: Quantity = { name: 'thread pitch', unit: 'millimetres', low: 0.3, high: 6 };
const THREADS: Quantity = { name: 'number of threads an inch', unit: '', low: 4, high: 80 };
export const TURNS: Quantity = { name: 'number of turns', unit: '', low: -50, high: 50 };

/**
 * Change of spring length when its bolt is turned: turns times pitch. Tightening is positive and shortens the spring.
 * @param turns -50 to 50; a flat is a sixth of a turn
 * @param pitchMm 0.3 to 6 mm
 * @throws ImpossibleFigure outside those ranges
 */
export function springChange(turns: number, pitchMm: number): Figure<'mm'> {
  return figure(possible(TURNS, turns) * possible(PITCH, pitchMm), 'mm', {
    says: 'The nut turns on the bolt and nothing turns with it.',
    standing: 'derived',
  });
}

/**
 * Pitch of an inch thread: one inch over threads an inch, 4 to 80.
 * @throws ImpossibleFigure outside that range
 */
export function pitchFromThreadsPerInch(threadsPerInch: number): Figure<'mm'> {
  return figure(convert('length', 1 / possible(THREADS, threadsPerInch), 'in', 'mm'), 'mm');
}
