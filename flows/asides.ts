import type { MeaningId } from '../grammar/lexicon.ts';
import { taughtForm } from '../grammar/lexicon.ts';
import type { MissCount } from '../grammar/measurements.ts';
import { type Say, sayWhole } from '../grammar/say.ts';
import type { Slots } from '../grammar/understand.ts';
import type { FamilyId } from './families/family.ts';
import type { JobContext } from './job-context.ts';
import { PARTS, type PartId } from './knotter.ts';
import { LOCKOUT_STEPS, SAFE_STOP_STEPS } from './lockout/steps.ts';
import type { Prompt } from './prompt.ts';
import { sayAbout, sayRecord } from './recollection.ts';
import { looksLikeLine } from './sayings.ts';
import { STATIONS, type Station, stationAfter } from './tying-cycle.ts';

/** Something asked about the question rather than in answer to it: it changes no state and leaves no answer. */
export interface Aside {
  readonly kind: 'why' | 'where' | 'howFar' | 'help' | 'repeat' | 'figure' | 'record' | 'tying';
  readonly say: Say;
  /** Shown under what is said, and not spoken: what a figure takes for granted. */
  readonly footnotes?: readonly string[];
  /** Where in one tie the drawing stands, as an index of the stations; set for `tying` alone. */
  readonly station?: number;
}

export const ASIDE_LINES = {
  youCanSay: 'You can say:',
  always: 'Always: say that again, go back one question, or stop everything now.',
  noWhy: 'There is no more to say about this one.',
  lockoutSteps: 'Lockout steps done:',
  of: 'of',
  answersSoFar: 'Answers so far:',
  numberExample: 'a number, then its unit',
  countExample: 'two out of ten',
  wholeExample: 'a whole number',
  dayExample: 'a month, then the day',
  firstStation: 'This is where a tie begins.',
  lastStation: 'That was the whole tie.',
} as const;

const VALUE_EXAMPLES = {
  measurement: ASIDE_LINES.numberExample,
  missCount: ASIDE_LINES.countExample,
  count: ASIDE_LINES.wholeExample,
  day: ASIDE_LINES.dayExample,
} as const;

/** "Look at the ...", for every part. */
export function lookAtLine(part: PartId): string {
  return `Look at the ${PARTS[part]}.`;
}

/**
 * The answer to an aside, or undefined where the meaning is not one.
 * @param context the job's context, for "how far" and for what was said
 * @param slots for the part that was asked about
 * @param shown the aside on the screen now: only a drawing that is shown can be stepped
 * @param counted bale by bale in this job, for the record
 */
export function asideFor(
  meaning: MeaningId,
  prompt: Prompt,
  context: JobContext,
  slots: Slots = {},
  shown?: Aside,
  counted?: MissCount,
): Aside | undefined {
  switch (meaning) {
    case 'sayAgain':
      return { kind: 'repeat', say: prompt.question };
    case 'why':
      return { kind: 'why', say: prompt.why.length > 0 ? prompt.why : [ASIDE_LINES.noWhy] };
    case 'showMe':
      return { kind: 'where', say: [lookAtLine(prompt.look)] };
    case 'howFar':
      return { kind: 'howFar', say: sayHowFar(context) };
    case 'help':
      return { kind: 'help', say: sayWhatCanBeSaid(prompt) };
    case 'recall.record':
      return { kind: 'record', say: sayRecord(context, counted) };
    case 'recall.part':
      return { kind: 'record', say: slots.part ? sayAbout(slots.part, context) : sayRecord(context) };
    case 'tying.open':
      return atStation(0);
    case 'tying.next':
      return stepped(shown, 1);
    case 'tying.back':
      return stepped(shown, -1);
    default:
      return undefined;
  }
}

/** What can be said while an aside is shown, beside everything else. */
export function saidOver(shown: Aside | undefined): readonly MeaningId[] {
  return shown?.kind === 'tying' ? ['tying.next', 'tying.back'] : [];
}

/** What is said of a station. */
export function sayStation({ title, tells }: Pick<Station, 'title' | 'tells'>): Say {
  return [`${title}.`, ...tells.split(/(?<=\.) /)];
}

function atStation(station: number): Aside {
  return { kind: 'tying', say: sayStation(STATIONS[station] ?? STATIONS[0]), station };
}

/** One step on or back. At either end the drawing stays, and says so. */
function stepped(shown: Aside | undefined, by: 1 | -1): Aside | undefined {
  if (shown?.station === undefined) return undefined;
  const to = stationAfter(shown.station, by);
  if (to !== shown.station) return atStation(to);
  return { ...atStation(to), say: [by > 0 ? ASIDE_LINES.lastStation : ASIDE_LINES.firstStation] };
}

/** The answers asked for here, in the words prompts teach, then what always works. */
export function sayWhatCanBeSaid({ expecting }: Prompt): Say {
  const answers = expecting.meanings.map(taughtForm);
  const value = expecting.value ? [VALUE_EXAMPLES[expecting.value.kind]] : [];
  return [ASIDE_LINES.youCanSay, ...value, ...answers, ASIDE_LINES.always];
}

function sayHowFar({ confirmedSteps, answers, looksLike }: JobContext): Say {
  const family: FamilyId | undefined = looksLike;
  return [
    ...(confirmedSteps.length > 0
      ? [
          ASIDE_LINES.lockoutSteps,
          ...sayWhole(confirmedSteps.length),
          ASIDE_LINES.of,
          ...sayWhole(SAFE_STOP_STEPS.length + LOCKOUT_STEPS.length),
        ]
      : []),
    ASIDE_LINES.answersSoFar,
    ...sayWhole(answers.length),
    ...(family ? [looksLikeLine(family)] : []),
  ];
}
