import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

export const PITCH: Quantity = { name: 'chain pitch', unit: 'inches', low: 0.25, high: 3 };
export const PITCHES: Quantity = { name: 'number of pitches', unit: '', low: 4, high: 100, whole: true };

/** Per cent of lengthening at which to watch a chain and to replace it. Common practice, no source. */
const WATCH_FROM_PERCENT = 2;
const REPLACE_FROM_PERCENT = 3;

export interface ChainWear {
  readonly elongation: Figure<'%'>;
  readonly verdict: 'good' | 'replace soon' | 'replace now';
}

/**
 * How much longer a chain has worn than new: measured length over pitches times pitch, less one. Twelve pitches are
 * the usual span; measure on the tight side.
 * @param pitchIn nominal pitch, 0.25 to 3 in
 * @param pitches whole number, 4 to 100
 * @param measuredIn length over that many pitches, within 5 % under and 20 % over the nominal length
 * @throws ImpossibleFigure outside those ranges; a length further off means the pitches were miscounted
 */
export function chainWear(pitchIn: number, pitches: number, measuredIn: number): ChainWear {
  const nominalIn = possible(PITCH, pitchIn) * possible(PITCHES, pitches);
  possible(
    { name: 'measured chain length', unit: 'inches', low: 0.95 * nominalIn, high: 1.2 * nominalIn },
    measuredIn,
  );
  const percent = 100 * (measuredIn / nominalIn - 1);
  return {
    elongation: figure(percent, '%', {
      says: 'A chain two to three per cent longer than new is worn out.',
      standing: 'common practice, no source',
    }),
    verdict: verdictFor(percent),
  };
}

function verdictFor(percent: number): ChainWear['verdict'] {
  if (percent >= REPLACE_FROM_PERCENT) return 'replace now';
  return percent >= WATCH_FROM_PERCENT ? 'replace soon' : 'good';
}
