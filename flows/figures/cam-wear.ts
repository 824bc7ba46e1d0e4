import { type Assumption, type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

const BALE_COUNT: Quantity = { name: 'bale count', unit: '', low: 0, high: 1_000_000 };

/** Published wear of the cam and follower in a knotter of the single-cam type, for parts nobody has measured. */
const MAINTAIN_AT_BALES = 20_000;
const MEAN_WEAR_THEN_MM = 0.87;
const CANNOT_TIE_AT_MM = 2.3;

const PUBLISHED: Assumption = {
  says: 'One published test of one knotter type. Measure your own cam before you trust it.',
  standing: 'published',
  source: 'International Journal of Performability Engineering 15(1), 2019, 23-34',
};
const LINEAR: Assumption = { says: 'Cam wear grows in proportion to the bales.', standing: 'derived' };

export interface CamOutlook {
  readonly meanWear: Figure<'mm'>;
  /** Bales until the cam and follower are due to be inspected and likely replaced; 0 when past. */
  readonly balesToMaintenance: Figure<'bales'>;
  /** Bales until a knotter with mean wear can no longer tie; 0 when past. */
  readonly balesToFailure: Figure<'bales'>;
}

/**
 * What the published wear figures say of a cam that has made so many bales, 0 to 1,000,000.
 * @throws ImpossibleFigure outside that range
 */
export function camOutlook(balesMade: number): CamOutlook {
  const bales = possible(BALE_COUNT, balesMade);
  const wearPerBaleMm = MEAN_WEAR_THEN_MM / MAINTAIN_AT_BALES;
  return {
    meanWear: figure(bales * wearPerBaleMm, 'mm', PUBLISHED, LINEAR),
    balesToMaintenance: figure(Math.max(0, MAINTAIN_AT_BALES - bales), 'bales', PUBLISHED),
    balesToFailure: figure(Math.max(0, CANNOT_TIE_AT_MM / wearPerBaleMm - bales), 'bales', PUBLISHED, LINEAR),
  };
}
