import { beliefsAfter } from '../diagnosis/beliefs.ts';
import { familyById } from '../families/all.ts';
import type { JobContext } from '../job-context.ts';
import { type DrillEntry, type DrillState, lessonOf } from './drill.ts';
import { type DrillScore, scoreOf } from './score.ts';

/** What a trainer and a trainee talk over after a drill; plain data, and what is saved as a file. */
export interface Debrief {
  readonly format: 'knotwright drill';
  readonly version: 1;
  /** Says what this is to whoever finds the file. */
  readonly notice: string;
  readonly seed: number;
  readonly level: number;
  readonly trainee: string;
  readonly comment: string;
  readonly hidden: { readonly fault: string; readonly looksLike: string; readonly side: string };
  /** P(the hidden fault) before any answer and after each, by the tables. */
  readonly belief: readonly { readonly after: string; readonly probability: number }[];
  readonly score: DrillScore;
  /** Everything that happened, seconds from the start. */
  readonly timeline: readonly { readonly atS: number; readonly entry: DrillEntry }[];
  readonly rules: readonly string[];
}

export const DRILL_NOTICE =
  'A drill with an invented fault. No machine was looked at, and none was repaired.';

const NO_LESSON = 'Say what you see, and nothing more.';

/**
 * @param context the job of the drill as it ended
 * @param who initials of the trainee and the trainer's comment; either may be empty
 */
export function debriefOf(
  drill: DrillState,
  context: JobContext,
  who: { readonly trainee: string; readonly comment: string },
): Debrief {
  const { setup, hidden, entries } = drill;
  const family = familyById(hidden.family);
  const startMs = entries[0]?.atMs ?? 0;
  const probability = (count: number) =>
    beliefsAfter(context.answers.slice(0, count)).find(
      (belief) => belief.family === hidden.family && belief.cause === hidden.cause,
    )?.probability ?? 0;
  return {
    format: 'knotwright drill',
    version: 1,
    notice: DRILL_NOTICE,
    seed: setup.seed,
    level: setup.level,
    ...who,
    hidden: {
      fault: family.causes[hidden.cause]?.name ?? hidden.cause,
      looksLike: family.name,
      side: hidden.side,
    },
    belief: [
      { after: 'start', probability: probability(0) },
      ...context.answers.map(({ question }, at) => ({ after: question, probability: probability(at + 1) })),
    ],
    score: scoreOf(drill, context),
    timeline: entries.map((entry) => ({ atS: Math.round((entry.atMs - startMs) / 1000), entry })),
    rules: rulesOf(entries),
  };
}

/** What to keep in mind: the fatal error first, then what was noticed late or answered otherwise than shown. */
function rulesOf(entries: readonly DrillEntry[]): readonly string[] {
  const fatal = entries.flatMap((entry) => (entry.kind === 'fatal' ? [lessonOf(entry.hazard)] : []));
  if (fatal.length > 0) return fatal;
  const met = entries.flatMap((entry) => (entry.kind === 'noticed' ? [lessonOf(entry.hazard)] : []));
  return met.length > 0 ? [...new Set(met)] : [NO_LESSON];
}
