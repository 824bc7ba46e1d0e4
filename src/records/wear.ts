import { USUAL_CONFIDENCE } from '../../flows/figures/confidence.ts';
import type { WearForecast, WearReading } from '../../flows/figures/wear.ts';
import { forecastWear } from '../../flows/figures/wear.ts';

/** A part of a machine whose wear is measured now and then. */
export interface WearingPart {
  /** In the words of whoever measures it. */
  readonly name: string;
  /** Wear at which it is done, millimetres, and where that number comes from. */
  readonly limitMm: number;
  readonly limitSource: string;
  /** Whether it was fitted new at bale 0 of its readings, or took a set at first so that the line starts anywhere. */
  readonly from: 'new at zero' | 'run in';
  /** In the order they were taken; a reading is never changed, a wrong one is left out by a later revision. */
  readonly readings: readonly WearReading[];
}

const LEAST_READINGS = { 'new at zero': 2, 'run in': 3 } as const;

/** Where a part stands on its wear line, or in one sentence why nobody can tell yet. */
export function wearOutlook({ limitMm, from, readings }: WearingPart): WearForecast {
  const least = LEAST_READINGS[from];
  const balesNow = Math.max(0, ...readings.map(({ bales }) => bales));
  const spread = new Set(readings.map(({ bales }) => bales).filter((bales) => bales > 0)).size;
  if (spread < least) {
    return {
      kind: 'no wear trend',
      says: `It takes ${least} readings at different bale counts. There ${spread === 1 ? 'is' : 'are'} ${spread}.`,
    };
  }
  return forecastWear({ readings, limitMm, balesNow, from, confidence: USUAL_CONFIDENCE });
}
