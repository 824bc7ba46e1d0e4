import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Side } from '../../grammar/sides.ts';
import { beliefsAfter, type Hypothesis } from '../diagnosis/beliefs.ts';
import { familyById } from '../families/all.ts';
import type { JobContext } from '../job-context.ts';
import type { DrillEntry, DrillState } from './drill.ts';
import { hazardById } from './hazards.ts';
import { isHidden } from './hidden-fault.ts';
import { DRILL_LEVELS, type DrillLevel } from './levels.ts';
import { DEBRIEF_LINES } from './lines.ts';
import { type DrillScore, scoreOf } from './score.ts';

/** What a trainer and a trainee talk over after a drill; plain data, and what is saved as a file. */
export interface Debrief {
  readonly format: 'knotwright drill';
  readonly version: 1;
  /** Says what this is to whoever finds the file. */
  readonly notice: string;
  readonly seed: number;
  readonly level: DrillLevel;
  readonly trainee: string;
  readonly comment: string;
  readonly hidden: {
    readonly causes: readonly Hypothesis[];
    readonly faults: readonly string[];
    readonly looksLike: string;
    readonly side: Side;
  };
  /** P(what was hidden) before any answer and after each, by the tables. */
  readonly belief: readonly { readonly after: string; readonly probability: number }[];
  /** The answer that made the fault more likely than any other did; missing where none raised it. */
  readonly toldMost?: MeaningId;
  readonly score: DrillScore;
  /** Everything that happened, seconds from the start. */
  readonly timeline: readonly { readonly atS: number; readonly entry: DrillEntry }[];
  /** The first is the one to keep. */
  readonly rules: readonly string[];
  readonly next: NextDrill;
}

/** What to give this trainee next. */
export type NextDrill = 'again' | 'another' | 'harder' | 'hardest';

export const DRILL_NOTICE =
  'A drill with an invented fault. No machine was looked at, and none was repaired.';

/**
 * @param context the job of the drill as it ended
 * @param who initials of the trainee and the trainer's comment; either may be empty
 */
export function debriefOf(
  drill: DrillState,
  context: JobContext,
  who: { readonly trainee: string; readonly comment: string },
): Debrief {
  const { machine, entries } = drill;
  const { setup, hidden } = machine;
  const startMs = entries[0]?.atMs ?? 0;
  const probability = (count: number) =>
    beliefsAfter(context.answers.slice(0, count)).reduce(
      (sum, belief) => sum + (isHidden(hidden, belief) ? belief.probability : 0),
      0,
    );
  const score = scoreOf(drill, context);
  const toldMost = toldMostOf(context, probability);
  return {
    format: 'knotwright drill',
    version: 1,
    notice: DRILL_NOTICE,
    seed: setup.seed,
    level: setup.level,
    ...who,
    hidden: {
      causes: hidden.faults,
      faults: hidden.faults.map(({ family, cause }) => familyById(family).causes[cause]?.name ?? cause),
      looksLike: familyById(hidden.faults[0].family).name,
      side: hidden.side,
    },
    belief: [
      { after: 'start', probability: probability(0) },
      ...context.answers.map(({ question }, at) => ({ after: question, probability: probability(at + 1) })),
    ],
    ...(toldMost ? { toldMost } : {}),
    score,
    timeline: entries.map((entry) => ({ atS: Math.round((entry.atMs - startMs) / 1000), entry })),
    rules: rulesOf(entries),
    next: nextDrill(score, setup.level),
  };
}

function toldMostOf({ answers }: JobContext, probability: (count: number) => number): MeaningId | undefined {
  const rises = answers.map(({ said }, at) => ({ said, rise: probability(at + 1) - probability(at) }));
  return rises.filter(({ rise }) => rise > 0).sort((a, b) => b.rise - a.rise)[0]?.said;
}

function nextDrill({ fatal, passed }: DrillScore, level: DrillLevel): NextDrill {
  if (fatal) return 'again';
  if (!passed) return 'another';
  return level === DRILL_LEVELS.at(-1) ? 'hardest' : 'harder';
}

/** What to keep in mind: the fatal error alone; else the hazards that were met, the one noticed latest first. */
function rulesOf(entries: readonly DrillEntry[]): readonly string[] {
  const fatal = entries.flatMap((entry) => (entry.kind === 'fatal' ? [hazardById(entry.hazard).lesson] : []));
  if (fatal.length > 0) return fatal;
  const met = entries
    .flatMap((entry) => (entry.kind === 'noticed' ? [entry] : []))
    .sort((a, b) => b.afterMs - a.afterMs)
    .map(({ hazard }) => hazardById(hazard).lesson);
  return met.length > 0 ? [...new Set(met)] : [DEBRIEF_LINES.sayWhatYouSee];
}
