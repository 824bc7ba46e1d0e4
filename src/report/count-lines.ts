import { USUAL_CONFIDENCE } from '../../flows/figures/confidence.ts';
import { missRateInterval } from '../../flows/figures/miss-rate.ts';
import type { CountEntry } from '../../flows/miss-log/entry.ts';
import { type Pattern, patternsIn } from '../../flows/miss-log/patterns.ts';
import { isMissed, type Tally, tallyOf } from '../../flows/miss-log/tally.ts';
import type { LogEntry } from '../records/log-entry.ts';
import { percentText } from './words.ts';

/** Bales counted one by one during a job, and what they show. */
export interface BaleCount {
  readonly bales: number;
  readonly missed: number;
  readonly left: number;
  readonly right: number;
  /** Runs of bales in the order they were made, each with its share of missed ones and the exact band of it. */
  readonly runs: readonly BaleRun[];
  /** The patterns found, in words with their chance. */
  readonly patterns: readonly string[];
}

export interface BaleRun {
  /** Number of its first and last bale, from 1. */
  readonly from: number;
  readonly to: number;
  readonly missed: number;
  readonly rate: number;
  readonly lower: number;
  readonly upper: number;
}

/** As many runs as a chart can show apart. */
const MOST_RUNS = 10;
/** Fewer bales than this in a run and its band says nothing. */
const LEAST_IN_RUN = 5;

/** What was counted in a job; undefined where nothing was. */
export function countOf(entries: readonly LogEntry[]): BaleCount | undefined {
  const counted: readonly CountEntry[] = entries.flatMap(({ event }) =>
    event.type === 'record.counted' ? [event.entry] : [],
  );
  const tally = tallyOf(counted);
  return tally.bales.length > 0 ? baleCount(tally) : undefined;
}

/** A tally in numbers and words. */
export function baleCount(tally: Tally): BaleCount {
  const { bales, missedBales, misses } = tally;
  return {
    bales: bales.length,
    missed: missedBales,
    left: misses.left,
    right: misses.right,
    runs: runsOf(tally),
    patterns: patternsIn(tally).map(patternText),
  };
}

/** The count in one sentence. */
export function countSentence({ bales, missed, left, right }: BaleCount): string {
  const { lower, upper } = missRateInterval(missed, bales, USUAL_CONFIDENCE);
  return `${missed} of ${bales} bales missed (left ${left}, right ${right}): ${percentText(missed / bales)}, with ${percentText(USUAL_CONFIDENCE)} confidence between ${percentText(lower)} and ${percentText(upper)}.`;
}

function runsOf({ bales }: Tally): readonly BaleRun[] {
  const size = Math.max(LEAST_IN_RUN, Math.ceil(bales.length / MOST_RUNS));
  return Array.from({ length: Math.ceil(bales.length / size) }, (_, index) => {
    const run = bales.slice(index * size, (index + 1) * size);
    const missed = run.filter(isMissed).length;
    return {
      from: index * size + 1,
      to: index * size + run.length,
      missed,
      rate: missed / run.length,
      ...missRateInterval(missed, run.length, USUAL_CONFIDENCE),
    };
  });
}

function patternText(pattern: Pattern): string {
  const chance = `by luck alone in ${percentText(pattern.chance)} of cases`;
  switch (pattern.kind) {
    case 'oneSide':
      return `Most of the misses are on the ${pattern.side}, ${chance}.`;
    case 'afterBallChange':
      return `${pattern.inWindow} of ${pattern.of} misses came just after a ball change, ${chance}.`;
    case 'denseCrop':
      return `The misses come in heavy or green crop, ${chance}.`;
    case 'tightBales':
      return `The misses come in bales that are set tighter, ${chance}.`;
    case 'fullSpeed':
      return `The misses come at full shaft speed, ${chance}.`;
    case 'gettingWorse':
      return `The misses are getting more, ${chance}.`;
  }
}
