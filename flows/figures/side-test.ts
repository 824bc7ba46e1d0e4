import { chanceOfAtLeast } from './binomial-tail.ts';
import { possible, type Quantity } from './quantity.ts';

export const MISSES: Quantity = { name: 'number of misses', unit: '', low: 0, high: 100_000, whole: true };

export interface SideTest {
  readonly heavierSide: 'left' | 'right' | 'even';
  /** Chance of so many on that side if both miss alike and that side was suspected before counting. */
  readonly chanceIfNamedBefore: number;
  /** The same if the side was picked only because it came out heavier: the honest figure for a miss log. */
  readonly chanceOnEitherSide: number;
}

/**
 * Whether the misses lean to one side more than luck would: a sign test, each miss left or right with chance 1/2.
 * A small chance says one knotter is at fault; a large one says both share it or the log is too short.
 * @param left misses of the left knotter, 0 to 100,000
 * @param right misses of the right knotter, 0 to 100,000
 * @throws ImpossibleFigure outside those ranges
 */
export function sideTest(left: number, right: number): SideTest {
  possible({ ...MISSES, name: 'number of left misses' }, left);
  possible({ ...MISSES, name: 'number of right misses' }, right);
  const chanceIfNamedBefore = chanceOfAtLeast(Math.max(left, right), left + right, 0.5);
  return {
    heavierSide: left === right ? 'even' : left > right ? 'left' : 'right',
    chanceIfNamedBefore,
    chanceOnEitherSide: Math.min(1, 2 * chanceIfNamedBefore),
  };
}
