import { BALE_HEIGHT, BALE_LENGTH, BALE_WEIGHT, BALE_WIDTH } from './bale-quantities.ts';
import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { convert } from './units.ts';

export const BALE_DENSITY: Quantity = { name: 'bale density', unit: 'pounds a cubic foot', low: 2, high: 40 };
export const MOISTURE: Quantity = { name: 'moisture share', unit: '', low: 0, high: 0.9 };

/** Outside measures of a bale, in inches. */
export interface BaleSize {
  readonly lengthIn: number;
  readonly heightIn: number;
  readonly widthIn: number;
}

/**
 * Volume of a bale as a plain block: length times height times width.
 * @throws ImpossibleFigure for a length outside 12 to 60 in, a height outside 8 to 24 in or a width outside 8 to 30 in
 */
export function baleVolume({ lengthIn, heightIn, widthIn }: BaleSize): Figure<'ft3'> {
  const volumeIn3 =
    possible(BALE_LENGTH, lengthIn) * possible(BALE_HEIGHT, heightIn) * possible(BALE_WIDTH, widthIn);
  return figure(convert('volume', volumeIn3, 'in3', 'ft3'), 'ft3', {
    says: 'The bale is a square block.',
    standing: 'derived',
  });
}

/**
 * Weight of a bale from its density, 2 to 40 lb/ft3.
 * @throws ImpossibleFigure outside that range, or as `baleVolume`
 */
export function baleWeight(size: BaleSize, densityLbPerFt3: number): Figure<'lb'> {
  const volume = baleVolume(size);
  return figure(volume.value * possible(BALE_DENSITY, densityLbPerFt3), 'lb', ...volume.assumptions);
}

/**
 * Density of a weighed bale, 5 to 300 lb.
 * @throws ImpossibleFigure outside that range, or as `baleVolume`
 */
export function baleDensity(size: BaleSize, weightLb: number): Figure<'lb/ft3'> {
  const volume = baleVolume(size);
  return figure(possible(BALE_WEIGHT, weightLb) / volume.value, 'lb/ft3', ...volume.assumptions);
}

/**
 * Dry matter in a bale: weight times (1 - moisture).
 * @param weightLb 5 to 300 lb
 * @param moistureShare water as a share of the whole weight, 0 to 0.9
 * @throws ImpossibleFigure outside those ranges
 */
export function dryMatter(weightLb: number, moistureShare: number): Figure<'lb'> {
  return figure(possible(BALE_WEIGHT, weightLb) * (1 - possible(MOISTURE, moistureShare)), 'lb', {
    says: 'Moisture is counted on the wet weight.',
    standing: 'derived',
  });
}

/** Above this much denser than the last bales that tied well, density itself is a suspect. */
const SUSPECT_DENSITY_RATIO = 1.15;

export interface DensityChange {
  readonly ratio: Figure<'times'>;
  /** True when the bales have become dense enough to pull knots apart or strands out of the holder. */
  readonly suspect: boolean;
}

/**
 * Compares the density of bales now with that of the last bales that tied well, each 2 to 40 lb/ft3.
 * @throws ImpossibleFigure outside that range
 */
export function densityChange(nowLbPerFt3: number, lastGoodLbPerFt3: number): DensityChange {
  const ratio = possible(BALE_DENSITY, nowLbPerFt3) / possible(BALE_DENSITY, lastGoodLbPerFt3);
  return {
    ratio: figure(ratio, 'times', {
      says: 'Fifteen per cent denser than the last good bales counts as a change.',
      standing: 'expert estimate',
    }),
    suspect: ratio > SUSPECT_DENSITY_RATIO,
  };
}
