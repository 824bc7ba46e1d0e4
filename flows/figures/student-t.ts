import { CONFIDENCE } from './confidence.ts';
import { incompleteBetaInverse } from './incomplete-beta.ts';
import { possible, type Quantity } from './quantity.ts';

const FREEDOM: Quantity = { name: 'number of spare readings', unit: '', low: 1, high: 100_000, whole: true };

/**
 * Student's t for a two-sided interval: the t that a t variable stays within, either way, with chance `confidence`.
 * With x the beta quantile of 1 - confidence at (freedom / 2, 1/2), t = sqrt(freedom (1 - x) / x).
 * Source: "Student", "The probable error of a mean", Biometrika 6(1), 1908, 1-25; the link to the beta distribution
 * is Abramowitz and Stegun, "Handbook of Mathematical Functions", 26.7.1.
 * @param confidence 0.5 to 0.9999
 * @param freedom degrees of freedom, whole number, 1 to 100,000
 * @throws ImpossibleFigure outside those ranges
 */
export function studentT(confidence: number, freedom: number): number {
  const outside = 1 - possible(CONFIDENCE, confidence);
  // The mirrored quantile keeps its digits where x is close to 1 and t close to 0.
  const oneLessX = incompleteBetaInverse(confidence, 0.5, possible(FREEDOM, freedom) / 2);
  const x = incompleteBetaInverse(outside, freedom / 2, 0.5);
  return Math.sqrt((freedom * oneLessX) / x);
}
