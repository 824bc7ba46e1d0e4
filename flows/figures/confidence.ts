import type { Quantity } from './quantity.ts';

/** How sure a verdict must be, as a fraction: 0.95 is "95 times in 100 this way of judging is right". */
export const CONFIDENCE: Quantity = { name: 'confidence', unit: '', low: 0.5, high: 0.9999 };

/** The customary level. A convention of statistics, not a rule of the trade. */
export const USUAL_CONFIDENCE = 0.95;
