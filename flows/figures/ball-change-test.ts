import { chanceOfAtLeast } from './binomial-tail.ts';
import { possible, type Quantity } from './quantity.ts';

export const MISSES: Quantity = { name: 'number of misses', unit: '', low: 0, high: 100_000, whole: true };
export const BALES_PER_BALL: Quantity = {
  name: 'number of bales a ball',
  unit: '',
  low: 2,
  high: 100_000,
  whole: true,
};

/**
 * Chance that so many of the misses fall just after a ball change if they fall anywhere along the ball alike.
 * A small chance points at the splice or the new ball.
 * @param missesInWindow misses within `windowBales` after a change, 0 to `misses`
 * @param misses all misses, 0 to 100,000
 * @param balesPerBall whole number, 2 to 100,000
 * @param windowBales whole number, 1 to `balesPerBall`; see `SPLICE_WINDOW_BALES`
 * @throws ImpossibleFigure outside those ranges
 */
export function chanceNotTheBallChange(
  missesInWindow: number,
  misses: number,
  balesPerBall: number,
  windowBales: number,
): number {
  possible(MISSES, misses);
  possible({ ...MISSES, name: 'number of misses after ball changes', high: misses }, missesInWindow);
  possible(BALES_PER_BALL, balesPerBall);
  possible(
    { ...BALES_PER_BALL, name: 'number of bales in the window', low: 1, high: balesPerBall },
    windowBales,
  );
  return chanceOfAtLeast(missesInWindow, misses, windowBales / balesPerBall);
}
