import { STRINGS } from './bale-quantities.ts';
import { exactInterval, type Interval } from './binomial-interval.ts';
import { possible, type Quantity } from './quantity.ts';

const TIES: Quantity = { name: 'number of ties', unit: '', low: 1, high: 1_000_000, whole: true };
/** A chance of a missed knot, 0 to 1. */
const MISS_RATE: Quantity = { name: 'miss rate', unit: '', low: 0, high: 1 };

/**
 * What `misses` missed knots in `ties` say about a knotter: the exact two-sided interval of its miss rate.
 * One tie is one knot of the suspect knotter, so its ties are the bales. For the whole machine they are bales times
 * strings.
 * @param misses whole number, 0 to `ties`
 * @param ties whole number, 1 to 1,000,000
 * @param confidence 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function missRateInterval(misses: number, ties: number, confidence: number): Interval {
  possible(TIES, ties);
  possible({ ...TIES, name: 'number of misses', low: 0, high: ties }, misses);
  return exactInterval(misses, ties, confidence);
}

/**
 * Chance that a bale has at least one missed knot: 1 - (1 - p)^strings, the knotters missing independently.
 * @param knotMissRate chance that one knot is missed, 0 to 1
 * @param strings strings a bale, 1 to 3
 * @throws ImpossibleFigure outside those ranges
 */
export function baleMissRate(knotMissRate: number, strings = 2): number {
  return -Math.expm1(possible(STRINGS, strings) * Math.log1p(-possible(MISS_RATE, knotMissRate)));
}

/**
 * The inverse: chance that one knot is missed, from the share of bales with a missed knot, 0 to 1.
 * @throws ImpossibleFigure outside those ranges
 */
export function knotMissRate(missedBaleRate: number, strings = 2): number {
  return -Math.expm1(Math.log1p(-possible(MISS_RATE, missedBaleRate)) / possible(STRINGS, strings));
}
