import { STROKES_PER_MINUTE } from './bale-quantities.ts';
import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

const SECONDS: Quantity = { name: 'time', unit: 'seconds', low: 0, high: 60 };

/**
 * Time of one plunger stroke, which is one crank turn: 60 over strokes a minute.
 * @param strokesPerMinute 20 to 150
 * @throws ImpossibleFigure outside that range
 */
export function strokeTime(strokesPerMinute: number): Figure<'s'> {
  return figure(60 / possible(STROKES_PER_MINUTE, strokesPerMinute), 's');
}

/**
 * Crank degrees that go by in a given time: 6 times strokes a minute times seconds. A part that lags for a fixed time
 * (a bouncing needle, a tired brake) uses up more degrees the faster the baler runs.
 * @param seconds 0 to 60 s
 * @param strokesPerMinute 20 to 150
 * @throws ImpossibleFigure outside those ranges
 */
export function crankDegreesIn(seconds: number, strokesPerMinute: number): Figure<'deg'> {
  return figure(6 * possible(STROKES_PER_MINUTE, strokesPerMinute) * possible(SECONDS, seconds), 'deg', {
    says: 'The speed does not sag under load.',
    standing: 'derived',
  });
}
