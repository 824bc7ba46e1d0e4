import { CONFIDENCE } from './confidence.ts';
import { possible, type Quantity } from './quantity.ts';
import { wholeNeeded } from './whole-count.ts';

/** The rate a clean run must rule out: the miss rate before the repair. */
const MISS_RATE_BEFORE: Quantity = { name: 'miss rate before the repair', unit: '', low: 0.000001, high: 1 };
export const CLEAN_TIES: Quantity = {
  name: 'number of clean ties',
  unit: '',
  low: 0,
  high: 1_000_000,
  whole: true,
};

/** Decimals such as 0.9 are not exact in binary; without this a run of exactly 46 could come out as 47. */
const ROUNDING_SLACK = 1e-9;

/**
 * Consecutive good ties that an unrepaired knotter would manage with a chance of at most 1 - confidence:
 * n = ceil(ln(1 - confidence) / ln(1 - p)). A figure of statistics, not a rule of the trade: no published number
 * of good ties after a repair is known.
 * @param missRateBefore miss rate before the repair, 0.000001 to 1 (at 1 a single good tie proves it)
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function cleanTiesNeeded(missRateBefore: number, confidence: number): number {
  const p = possible(MISS_RATE_BEFORE, missRateBefore);
  const ties = Math.log(1 - possible(CONFIDENCE, confidence)) / Math.log1p(-p);
  return Math.max(1, wholeNeeded(ties));
}

/**
 * Ties needed where one miss among them is forgiven: the smallest n with
 * (1 - p)^n + n p (1 - p)^(n - 1) <= 1 - confidence. Decide to forgive a miss before the run, not after seeing it.
 * @param missRateBefore 0.000001 to 1
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function tiesNeededForgivingOneMiss(missRateBefore: number, confidence: number): number {
  const p = possible(MISS_RATE_BEFORE, missRateBefore);
  const allowed = (1 - possible(CONFIDENCE, confidence)) * (1 + ROUNDING_SLACK);
  let tooFew = 1;
  let enough = 2;
  while (chanceOfOneMissAtMost(enough, p) > allowed) {
    tooFew = enough;
    enough *= 2;
  }
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (chanceOfOneMissAtMost(middle, p) > allowed) tooFew = middle;
    else enough = middle;
  }
  return enough;
}

function chanceOfOneMissAtMost(ties: number, p: number): number {
  return (1 - p + ties * p) * (1 - p) ** (ties - 1);
}

/**
 * Chance that a knotter with this miss rate still ties `cleanTies` in a row: (1 - p)^n.
 * Ten in a row from a knotter that misses one in ten is 0.349, which is why ten in a row proves little.
 * @param cleanTies whole number, 0 to 1,000,000
 * @param missRate 0.000001 to 1
 * @throws ImpossibleFigure outside those ranges
 */
export function chanceOfCleanRun(cleanTies: number, missRate: number): number {
  return (1 - possible(MISS_RATE_BEFORE, missRate)) ** possible(CLEAN_TIES, cleanTies);
}

/**
 * Highest miss rate still believable after `cleanTies` good ties and no miss, one-sided and exact:
 * 1 - (1 - confidence)^(1/n). About 3/n at 95 % ("rule of three": Jovanovic and Levy, "A Look at the Rule of
 * Three", The American Statistician 51(2), 1997, 137-139). With no ties at all nothing is ruled out: 1.
 * @param cleanTies whole number, 0 to 1,000,000
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function upperBoundAfterClean(cleanTies: number, confidence: number): number {
  const n = possible(CLEAN_TIES, cleanTies);
  return -Math.expm1(Math.log(1 - possible(CONFIDENCE, confidence)) / n);
}
