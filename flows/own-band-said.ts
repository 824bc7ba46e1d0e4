import { type Say, sayBand } from '../grammar/say.ts';
import { LINES } from './lines.ts';
import type { MachineBand } from './machine-values.ts';
import { sayMeasurement } from './sayings.ts';

/** The machine's own limits as they are spoken; where they came from is free text and stands on the card. */
export function sayOwnBand(own: MachineBand | undefined): Say {
  const [low, high] = own?.limits ?? [];
  if (!low) return [];
  if (!high) return [LINES.ownLimit, ...sayMeasurement(low)];
  return low.unit === high.unit && Number.isInteger(low.amount) && Number.isInteger(high.amount)
    ? [LINES.ownBand, ...sayBand(low.amount, high.amount, high.unit)]
    : [LINES.ownBand, ...sayMeasurement(low), LINES.upTo, ...sayMeasurement(high)];
}
