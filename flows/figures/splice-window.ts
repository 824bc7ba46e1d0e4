import { TWINE_PER_STRING } from './bale-quantities.ts';
import { possible, type Quantity } from './quantity.ts';
import { wholeThatFit } from './whole-count.ts';

const BALL_LENGTH: Quantity = { name: 'ball length', unit: 'feet', low: 100, high: 100_000 };
export const BALES_SINCE: Quantity = {
  name: 'number of bales since the ball change',
  unit: '',
  low: 0,
  high: 100_000,
  whole: true,
};

/** Bales before a change at which to warn, and bales after it in which a miss points at the splice. Expert estimates. */
const WARN_BALES_BEFORE = 10;
export const SPLICE_WINDOW_BALES = 3;

export interface BallChange {
  /** Bales a ball ties. */
  readonly balesPerBall: number;
  /** Whole bales until this ball ends; 0 when it has outrun its length. */
  readonly balesLeft: number;
  /** 'splice window': the last knot in the twine has just gone through, so a miss may be its doing. */
  readonly stage: 'splice window' | 'steady' | 'change soon' | 'outran its length';
}

/**
 * When the next ball starts on one string.
 * @param ballFt length of one ball, 100 to 100,000 ft
 * @param twinePerStringFt 3 to 20 ft
 * @param balesSinceChange whole number, 0 to 100,000
 * @throws ImpossibleFigure outside those ranges
 */
export function nextBallChange(
  ballFt: number,
  twinePerStringFt: number,
  balesSinceChange: number,
): BallChange {
  const balesPerBall = wholeThatFit(
    possible(BALL_LENGTH, ballFt) / possible(TWINE_PER_STRING, twinePerStringFt),
  );
  const left = balesPerBall - possible(BALES_SINCE, balesSinceChange);
  return { balesPerBall, balesLeft: Math.max(0, left), stage: stageOf(balesSinceChange, left) };
}

function stageOf(balesSinceChange: number, balesLeft: number): BallChange['stage'] {
  if (balesLeft < 0) return 'outran its length';
  if (balesSinceChange <= SPLICE_WINDOW_BALES) return 'splice window';
  return balesLeft <= WARN_BALES_BEFORE ? 'change soon' : 'steady';
}
