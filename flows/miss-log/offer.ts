import type { MissCount } from '../../grammar/measurements.ts';
import type { countUsing } from '../../grammar/phrases/counting.ts';
import { type Say, sayOutOf } from '../../grammar/say.ts';
import type { JobContext } from '../job-context.ts';
import type { Prompt } from '../prompt.ts';
import { type CountEntry, countedAfter, type DatedEntry } from './entry.ts';
import { COUNT_LINES } from './saying.ts';
import { isMissed, tallyOf } from './tally.ts';

/** Counted bales that can answer what is asked: taken only by their own phrase, and read back before they count. */
export interface CountOffer {
  readonly meaning: keyof typeof countUsing;
  readonly missCount: MissCount;
}

/** What the count can answer here; undefined where it can answer nothing. @param counted in this job, in order */
export function countOffer(
  { takesCount }: Prompt,
  context: JobContext,
  counted: readonly DatedEntry[],
): CountOffer | undefined {
  switch (takesCount) {
    case undefined:
      return undefined;
    case 'before':
      return missesBefore(context, counted);
    case 'ties':
      return tiesSince(context, counted);
  }
}

/** The job's question with the offer before it, and its phrase among the answers. */
export function withOffer(prompt: Prompt, { meaning, missCount }: CountOffer): Prompt {
  const lines = OFFER_LINES[meaning];
  const offer: Say = [lines.counted, ...sayOutOf(missCount.misses, missCount.bales, 'bale'), ...lines.how];
  const expecting = { ...prompt.expecting, meanings: [meaning, ...prompt.expecting.meanings] };
  return {
    ...prompt,
    question: [...prompt.question, ...offer],
    brief: [...prompt.brief, ...offer],
    expecting,
  };
}

const OFFER_LINES = {
  'count.asBefore': { counted: COUNT_LINES.countedBefore, how: [COUNT_LINES.takeBefore] },
  'count.asTies': { counted: COUNT_LINES.countedSince, how: [COUNT_LINES.firstOut, COUNT_LINES.takeTies] },
} as const satisfies Readonly<Record<CountOffer['meaning'], { readonly counted: string; readonly how: Say }>>;

/** What was counted of the machine as it was until the repairs that wait for their proof: an earlier one that failed left it so. */
export function countedBefore(
  { repairs }: Pick<JobContext, 'repairs'>,
  counted: readonly DatedEntry[],
): readonly CountEntry[] {
  return countedAfter(repairs.filter(({ outcome }) => outcome !== 'done').length, counted);
}

function missesBefore(context: JobContext, counted: readonly DatedEntry[]): CountOffer | undefined {
  const missCount = countOn(context.side, countedBefore(context, counted));
  return missCount.misses > 0 ? { meaning: 'count.asBefore', missCount } : undefined;
}

/** Since the last repair, without the first tie, which after threading does not count, and without those already taken. */
function tiesSince(
  { repairs, side, proof, twineCut }: JobContext,
  counted: readonly DatedEntry[],
): CountOffer | undefined {
  if (!proof || twineCut) return undefined;
  const missCount = countOn(side, countedAfter(repairs.length, counted), 1 + proof.fromCount);
  return missCount.bales > 0 ? { meaning: 'count.asTies', missCount } : undefined;
}

/** Misses on the side that is looked at, where one is known: the other knotter's are no matter of this repair. */
function countOn(
  side: JobContext['side'],
  entries: ReturnType<typeof countedAfter>,
  leaveOut = 0,
): MissCount {
  const bales = tallyOf(entries).bales.slice(leaveOut);
  const misses = bales.filter((bale) => (side ? bale.missed[side] : isMissed(bale))).length;
  return { misses, bales: bales.length };
}
