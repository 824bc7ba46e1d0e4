import { ruleOf } from '../../grammar/lexicon.ts';
import { type Say, sayMeasure, sayWhole } from '../../grammar/say.ts';
import type { Prompt } from '../prompt.ts';
import { causeLine } from '../sayings.ts';
import type { Debrief, NextDrill } from './debrief.ts';
import { LATE_MS } from './drill.ts';
import { hazardById } from './hazards.ts';
import { DEBRIEF_LINES } from './lines.ts';
import { answerTo, type Path } from './path.ts';

/** The debrief aloud, one point at a time: hazards first, then the points, the fault, what was lost, and what is next. */
export function debriefPoints(debrief: Debrief): readonly Say[] {
  const { score, rules, next } = debrief;
  const [rule] = rules;
  return [
    ...sayHazards(debrief),
    sayPoints(debrief),
    sayHidden(debrief),
    ...(score.fatal ? [] : [...sayMisread(debrief), ...sayMinutes(debrief), ...sayEnd(debrief)]),
    // After a fatal error its lesson was the first thing said.
    ...(score.fatal || rule === undefined ? [] : [[DEBRIEF_LINES.rule, rule]]),
    [NEXT_LINES[next], DEBRIEF_LINES.end],
  ];
}

/**
 * A point of the debrief as what is asked now.
 * @param at from 0
 */
export function debriefPrompt(points: readonly Say[], at: number, job: Prompt): Prompt {
  const say = points[at] ?? [];
  return {
    ...job,
    state: `drill.debrief.${at}`,
    notices: [],
    question: say,
    brief: say,
    why: [],
    safety: 'keepOut',
    expecting: { meanings: ['carryOn'] },
  };
}

/** What to do next, in a sentence. */
export const NEXT_LINES: Readonly<Record<NextDrill, string>> = {
  again: DEBRIEF_LINES.again,
  another: DEBRIEF_LINES.another,
  harder: DEBRIEF_LINES.harder,
  hardest: DEBRIEF_LINES.hardest,
};

function sayHazards({ timeline }: Debrief): readonly Say[] {
  const of = (entry: Debrief['timeline'][number]['entry']): readonly Say[] => {
    if (entry.kind === 'fatal') return [[DEBRIEF_LINES.fatal, ...sayHazard(entry)]];
    return entry.kind === 'noticed' && entry.afterMs > LATE_MS
      ? [[DEBRIEF_LINES.late, ...sayHazard(entry)]]
      : [];
  };
  const missed = timeline.flatMap(({ entry }) => of(entry));
  if (missed.length > 0) return missed;
  const wasAny = timeline.some(({ entry }) => entry.kind === 'happened');
  return [[wasAny ? DEBRIEF_LINES.allInTime : DEBRIEF_LINES.noHazard]];
}

function sayHazard({ hazard }: { readonly hazard: Parameters<typeof hazardById>[0] }): Say {
  const { happens, lesson } = hazardById(hazard);
  return [happens, lesson];
}

function sayPoints({ score }: Debrief): Say {
  if (score.fatal) return [DEBRIEF_LINES.noPoints];
  return [
    DEBRIEF_LINES.points,
    ...sayWhole(Math.round(score.points)),
    DEBRIEF_LINES.outOf,
    score.passed ? DEBRIEF_LINES.passed : DEBRIEF_LINES.notPassed,
  ];
}

function sayHidden({ hidden, toldMost }: Debrief): Say {
  const [first, ...others] = hidden.causes.map(({ family, cause }) => causeLine(family, cause));
  return [
    DEBRIEF_LINES.hidden,
    ...(first ? [first] : []),
    ...others.flatMap((line) => [DEBRIEF_LINES.andAlso, line]),
    ...(toldMost ? [DEBRIEF_LINES.toldMost, ruleOf(toldMost).readBack] : []),
  ];
}

/** The first answer that was not what was shown. */
function sayMisread({ timeline }: Debrief): readonly Say[] {
  for (const { entry } of timeline) {
    if (entry.kind !== 'said' || entry.gainBits === undefined || entry.meaning === answerTo(entry.shown))
      continue;
    const said = ruleOf(entry.meaning).readBack;
    return [[DEBRIEF_LINES.misread, said, DEBRIEF_LINES.shown, ruleOf(answerTo(entry.shown)).readBack]];
  }
  return [];
}

/** Minutes lost against the best way, and what lost them. */
function sayMinutes({ score }: Debrief): readonly Say[] {
  const { trainee, policy } = score;
  if (Math.round(trainee.minutes) <= Math.round(policy.minutes)) return [];
  const inVain = count(trainee, 'repairInVain') - count(policy, 'repairInVain');
  const lockouts = count(trainee, 'lockout') - Math.max(1, count(policy, 'lockout'));
  return [
    [
      DEBRIEF_LINES.bestWay,
      ...sayMinutesOf(policy),
      DEBRIEF_LINES.yourWay,
      ...sayMinutesOf(trainee),
      ...(inVain > 0 ? [DEBRIEF_LINES.repairedInVain, ...sayWhole(inVain)] : []),
      ...(lockouts > 0 ? [DEBRIEF_LINES.lockoutLost] : []),
    ],
  ];
}

function sayMinutesOf({ minutes }: Path): Say {
  return sayMeasure(Math.round(minutes), 'minute');
}

function count({ steps }: Path, kind: Path['steps'][number]['kind']): number {
  return steps.filter((step) => step.kind === kind).length;
}

function sayEnd({ score }: Debrief): readonly Say[] {
  if (score.trainee.end === 'handedOver') return [[DEBRIEF_LINES.notEnded]];
  return score.verification < 1 ? [[DEBRIEF_LINES.ties]] : [];
}
