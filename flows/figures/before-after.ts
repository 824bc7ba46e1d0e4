import { logGamma } from './incomplete-beta.ts';
import { possible, type Quantity } from './quantity.ts';

/** Ties counted in one spell, and how many of them were missed. */
export interface TieCount {
  readonly misses: number;
  readonly ties: number;
}

const TIES: Quantity = { name: 'number of ties', unit: '', low: 1, high: 1_000_000, whole: true };

/**
 * Chance of so few misses after the repair (or fewer) if the repair changed nothing and the same misses had fallen
 * among all ties at random. Small is proof; 0.05 is the customary line.
 * Source: Fisher's exact test, one-sided; R. A. Fisher, "The Design of Experiments", 1935, chapter 2.
 * @param before ties 1 to 1,000,000, misses 0 to ties
 * @param after the same
 * @throws ImpossibleFigure outside those ranges
 */
export function chanceRepairChangedNothing(before: TieCount, after: TieCount): number {
  checkCount('before', before);
  checkCount('after', after);
  const misses = before.misses + after.misses;
  const fewestAfter = Math.max(0, misses - before.ties);
  const logAllWays = logChoose(before.ties + after.ties, misses);
  let chance = 0;
  for (let afterMisses = fewestAfter; afterMisses <= after.misses; afterMisses++) {
    chance += Math.exp(
      logChoose(after.ties, afterMisses) + logChoose(before.ties, misses - afterMisses) - logAllWays,
    );
  }
  return Math.min(1, chance);
}

function checkCount(when: 'before' | 'after', { misses, ties }: TieCount): void {
  possible({ ...TIES, name: `number of ties ${when} the repair` }, ties);
  possible(
    { name: `number of misses ${when} the repair`, unit: '', low: 0, high: ties, whole: true },
    misses,
  );
}

function logChoose(n: number, k: number): number {
  return logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
}
