import type { Interval } from './binomial-interval.ts';
import type { Assumption } from './figure.ts';
import { missRateInterval } from './miss-rate.ts';

/** Miss rate a good knotter stays under, as a share of its ties. */
export const TARGET_MISS_RATE = 0.01;

const TARGET: Assumption = {
  says: 'Good knotters have missed fewer than one tie in a hundred since the nineteen-sixties.',
  standing: 'published',
  source: 'US patent 3,243,214',
};

export interface TargetVerdict {
  readonly verdict: 'better than the target' | 'worse than the target' | 'too few ties to tell';
  readonly interval: Interval;
  readonly assumptions: readonly Assumption[];
}

/**
 * Whether a log of ties shows a knotter better or worse than the target: only if its whole interval lies on one side.
 * @param misses whole number, 0 to `ties`
 * @param ties whole number, 1 to 1,000,000
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function compareWithTarget(misses: number, ties: number, confidence: number): TargetVerdict {
  const interval = missRateInterval(misses, ties, confidence);
  return { verdict: verdictFor(interval), interval, assumptions: [TARGET] };
}

function verdictFor({ lower, upper }: Interval): TargetVerdict['verdict'] {
  if (upper < TARGET_MISS_RATE) return 'better than the target';
  return lower > TARGET_MISS_RATE ? 'worse than the target' : 'too few ties to tell';
}
