import { CONFIDENCE } from './confidence.ts';
import { incompleteBetaInverse } from './incomplete-beta.ts';
import { possible, type Quantity } from './quantity.ts';

/** A span of fractions, each 0 to 1. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

const TRIALS: Quantity = { name: 'number of trials', unit: '', low: 1, high: 1_000_000, whole: true };

/**
 * Exact two-sided interval for the chance behind `events` in `trials` independent trials.
 * Each end leaves at most (1 - confidence) / 2 of chance outside.
 * Source: Clopper and Pearson, "The use of confidence or fiducial limits illustrated in the case of the
 * binomial", Biometrika 26(4), 1934, 404-413; the ends are beta quantiles.
 * @param events whole number, 0 to `trials`
 * @param trials whole number, 1 to 1,000,000
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function exactInterval(events: number, trials: number, confidence: number): Interval {
  possible(TRIALS, trials);
  possible({ name: 'number of events', unit: '', low: 0, high: trials, whole: true }, events);
  const outsideEachEnd = (1 - possible(CONFIDENCE, confidence)) / 2;
  const failures = trials - events;
  return {
    lower: events === 0 ? 0 : incompleteBetaInverse(outsideEachEnd, events, failures + 1),
    upper: failures === 0 ? 1 : incompleteBetaInverse(1 - outsideEachEnd, events + 1, failures),
  };
}
