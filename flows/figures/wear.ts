import { CONFIDENCE } from './confidence.ts';
import { type Assumption, type Figure, figure } from './figure.ts';
import { fitLine, fitLineThroughOrigin, type LineFit } from './line-fit.ts';
import { possible, type Quantity } from './quantity.ts';
import { studentT } from './student-t.ts';

export const WEAR_LIMIT: Quantity = { name: 'wear limit', unit: 'millimetres', low: 0.01, high: 50 };
export const WEAR: Quantity = { name: 'wear reading', unit: 'millimetres', low: 0, high: 50 };
export const BALE_COUNT: Quantity = { name: 'bale count', unit: '', low: 0, high: 10_000_000 };

/** A measured wear at a bale count. */
export interface WearReading {
  readonly bales: number;
  readonly wearMm: number;
}

export interface WearQuestion {
  readonly readings: readonly WearReading[];
  readonly limitMm: number;
  readonly balesNow: number;
  /** 'new at zero': the part was fitted new at count 0. 'run in': it took a set at first, so the line may start anywhere. */
  readonly from: 'new at zero' | 'run in';
  readonly confidence: number;
}

/** When a part reaches its limit, or why nobody can tell yet. */
export type WearForecast =
  | {
      readonly kind: 'forecast';
      readonly ratePerThousandBales: Figure<'mm/1000 bales'>;
      /** Best estimate of the bale count at the limit, and the counts it may come as early or as late as. */
      readonly limitAt: Figure<'bales'>;
      readonly earliestLimitAt: Figure<'bales'>;
      readonly latestLimitAt: Figure<'bales'>;
      /** Bales from now to the earliest count; 0 when that is past. */
      readonly balesLeft: Figure<'bales'>;
      /** Bale count at which to measure again: four fifths of the earliest. */
      readonly inspectAt: Figure<'bales'>;
    }
  | { readonly kind: 'no wear trend'; readonly says: string };

const STEADY: Assumption = {
  says: 'Wear grows in proportion to the bales. Denser bales wear faster, in proportion to the strand load.',
  standing: 'derived',
};
const INSPECT_SHARE = 0.8;
const INSPECT_EARLY: Assumption = {
  says: 'Measure again at four fifths of the earliest count.',
  standing: 'expert estimate',
};

/**
 * Bales left before a wearing part reaches its limit, from a straight line through its readings.
 * The span is where the confidence band of the line (Student's t) meets the limit: Fieller's method, E. C. Fieller,
 * "Some problems in interval estimation", J. R. Statist. Soc. B 16(2), 1954, 175-185.
 * @param question readings 0 to 50 mm at 0 to 10,000,000 bales (at least two when new at zero, three when run in),
 * limit 0.01 to 50 mm, confidence of the two-sided band 0.5 to 0.9999
 * @throws ImpossibleFigure outside those ranges
 */
export function forecastWear(question: WearQuestion): WearForecast {
  const limit = possible(WEAR_LIMIT, question.limitMm);
  const now = possible(BALE_COUNT, question.balesNow);
  const confidence = possible(CONFIDENCE, question.confidence);
  const line = wearLine(question);
  const span = line.slope > 0 ? countsAtLimit(line, limit, studentT(confidence, line.spareReadings)) : null;
  if (span === null) {
    return {
      kind: 'no wear trend',
      says: 'The readings do not show steady wear yet. Measure again after more bales.',
    };
  }
  return {
    kind: 'forecast',
    ratePerThousandBales: figure(1000 * line.slope, 'mm/1000 bales', STEADY),
    limitAt: figure((limit - line.intercept) / line.slope, 'bales', STEADY),
    earliestLimitAt: figure(span.earliest, 'bales', STEADY),
    latestLimitAt: figure(span.latest, 'bales', STEADY),
    balesLeft: figure(Math.max(0, span.earliest - now), 'bales', STEADY),
    inspectAt: figure(INSPECT_SHARE * span.earliest, 'bales', STEADY, INSPECT_EARLY),
  };
}

function wearLine({ readings, from }: WearQuestion): LineFit {
  const points = readings.map(({ bales, wearMm }) => ({
    x: possible(BALE_COUNT, bales),
    y: possible(WEAR, wearMm),
  }));
  switch (from) {
    case 'run in':
      return fitLine(points);
    case 'new at zero':
      // A reading taken when new says only what this line takes for granted; counting it would feign certainty.
      return fitLineThroughOrigin(points.filter(({ x }) => x > 0));
  }
}

/**
 * Where the band of the line, t errors either way, meets the limit. With u the distance from the line's centre and d
 * the wear still to come there: (slope u - d)^2 = t^2 residualSd^2 (centreShare + u^2 / spread), solved for u.
 * Null when the slope is not clear of zero, for then the band never closes.
 */
function countsAtLimit(line: LineFit, limit: number, t: number): { earliest: number; latest: number } | null {
  const d = limit - (line.intercept + line.slope * line.centre);
  const slopeDoubt = (t * line.slopeError) ** 2;
  const clearSlope = line.slope ** 2 - slopeDoubt;
  if (clearSlope <= 0) return null;
  const centreDoubt = (t * line.residualSd) ** 2 * line.centreShare;
  const halfWidth = Math.sqrt(slopeDoubt * d ** 2 + clearSlope * centreDoubt);
  const countAt = (u: number) => Math.max(0, line.centre + u);
  return {
    earliest: countAt((line.slope * d - halfWidth) / clearSlope),
    latest: countAt((line.slope * d + halfWidth) / clearSlope),
  };
}
