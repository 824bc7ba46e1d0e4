import { ImpossibleFigure } from './quantity.ts';

/** One reading of a wearing part. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight line y = intercept + slope x laid through readings by least squares. */
export interface LineFit {
  readonly intercept: number;
  readonly slope: number;
  /** Standard deviation of the readings about the line. */
  readonly residualSd: number;
  readonly slopeError: number;
  /** Readings beyond those the line itself uses up: degrees of freedom. */
  readonly spareReadings: number;
  /** Where the line is known best and how widely the readings lie, for the error of the line elsewhere. */
  readonly centre: number;
  readonly spread: number;
  /** Share of the residual variance in the height of the line at its centre: 1/n, or 0 for a line pinned at 0. */
  readonly centreShare: number;
}

/**
 * Least squares with a free intercept. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1.
 * @throws ImpossibleFigure with fewer than three readings, a reading that is no number, or all at one x
 */
export function fitLine(points: readonly Point[]): LineFit {
  checkPoints(points, 3);
  const n = points.length;
  const centre = points.reduce((sum, { x }) => sum + x, 0) / n;
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / n;
  const spread = points.reduce((sum, { x }) => sum + (x - centre) ** 2, 0);
  if (spread === 0) {
    throw new ImpossibleFigure(
      'All readings were taken at the same count. Say a reading from another count.',
    );
  }
  const slope = points.reduce((sum, { x, y }) => sum + (x - centre) * (y - meanY), 0) / spread;
  const intercept = meanY - slope * centre;
  return withErrors(points, { slope, intercept, centre, spread, centreShare: 1 / n }, n - 2);
}

/**
 * Least squares through the origin, for a part that was new, and unworn, at 0.
 * @throws ImpossibleFigure with fewer than two readings, a reading that is no number, or all at 0
 */
export function fitLineThroughOrigin(points: readonly Point[]): LineFit {
  checkPoints(points, 2);
  const spread = points.reduce((sum, { x }) => sum + x * x, 0);
  if (spread === 0) {
    throw new ImpossibleFigure('All readings were taken when new. Say a reading from after some work.');
  }
  const slope = points.reduce((sum, { x, y }) => sum + x * y, 0) / spread;
  return withErrors(points, { slope, intercept: 0, centre: 0, spread, centreShare: 0 }, points.length - 1);
}

function checkPoints(points: readonly Point[], fewest: number): void {
  if (points.length < fewest) {
    throw new ImpossibleFigure(
      `A trend needs at least ${fewest} readings and there are ${points.length}. Say another reading.`,
    );
  }
  if (points.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))) {
    throw new ImpossibleFigure('One of the readings is not a number. Say that reading again.');
  }
}

type Line = Pick<LineFit, 'slope' | 'intercept' | 'centre' | 'spread' | 'centreShare'>;

function withErrors(points: readonly Point[], line: Line, spareReadings: number): LineFit {
  const squares = points.reduce((sum, { x, y }) => sum + (y - line.intercept - line.slope * x) ** 2, 0);
  const residualSd = Math.sqrt(squares / spareReadings);
  return { ...line, residualSd, slopeError: residualSd / Math.sqrt(line.spread), spareReadings };
}
