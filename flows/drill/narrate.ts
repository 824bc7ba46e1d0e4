import { ruleOf } from '../../grammar/lexicon.ts';
import { type Say, sayOutOf } from '../../grammar/say.ts';
import type { JobContext } from '../job-context.ts';
import type { Prompt } from '../prompt.ts';
import { sayMeasurement } from '../sayings.ts';
import { DRILL_PRESSED, type DrillState, PRESSED_ANSWERS, shownNow } from './drill.ts';
import type { Finding } from './finding.ts';
import { HAZARDS, type Hazard, hazardById, isPressure, TRAP_IDS, type TrapId, trapById } from './hazards.ts';
import { DRILL_LEVELS, LEVELS } from './levels.ts';
import { DEBRIEF_LINES, DRILL_LINES, SET_UP_LINES } from './lines.ts';

/**
 * The job's question with what the machine of the drill shows put beside it.
 * @param hasPicture whether what is seen can be shown as a picture, to be judged by eye
 */
export function narrated(
  drill: DrillState,
  prompt: Prompt,
  context: JobContext,
  hasPicture: (finding: Finding) => boolean,
): Prompt {
  if (drill.over) return stopped(drill, prompt);
  const { trap, pressed, interruption } = drill;
  if (pressed) return pressing(prompt, hazardById(pressed.id).happens);
  const last = drill.entries.at(-1);
  const standing: Say = [
    ...(interruption?.sinceMs === undefined ? [] : [hazardById(interruption.id).happens]),
    ...(trap ? [hazardById(trap.id).happens] : []),
  ];
  const shown = shownNow(drill, prompt, context);
  const found = shown ? sayFinding(shown, isToBeJudged(drill) && hasPicture(shown)) : [];
  return {
    ...prompt,
    notices: [
      ...(drill.entries.length === 0 ? [DRILL_LINES.begins] : []),
      // What the job had to say was said before somebody pressed.
      ...(last?.kind === 'noticed' && isPressure(last.hazard)
        ? [ruleOf('pressure.refuse').readBack]
        : prompt.notices),
      ...(last?.kind === 'passed' ? sayPassed(last.hazard) : []),
    ],
    // What just happened is said before the question; what is found, after it.
    question: [...standing, ...prompt.question, ...found],
    // The question was asked; what is found is what has to be answered to.
    brief: [...standing, ...(found.length > 0 ? found : prompt.brief)],
  };
}

/** What the trainee finds, in the words the answer is read back in; a picture says it without words. */
export function sayFinding(finding: Finding, isPictured: boolean): Say {
  switch (finding.kind) {
    case 'told':
      return [DRILL_LINES.theyTell, ruleOf(finding.meaning).readBack];
    case 'seen':
      return isPictured
        ? [DRILL_LINES.lookAtPicture]
        : [DRILL_LINES.youFind, ruleOf(finding.meaning).readBack];
    case 'tie':
      return [DRILL_LINES.theTie, ruleOf(finding.meaning).readBack];
    case 'measured':
      return [DRILL_LINES.youRead, ...sayMeasurement(finding.measurement)];
    case 'counted':
      return [DRILL_LINES.theyCount, ...sayOutOf(finding.missCount.misses, finding.missCount.bales, 'bale')];
  }
}

/** Whether the trainee has to judge what the machine shows; else it is told in words. */
export function isToBeJudged({ machine }: DrillState): boolean {
  return LEVELS[machine.setup.level].shows === 'picturesAndNumbers';
}

function sayPassed(hazard: TrapId): Say {
  const { passes } = trapById(hazard);
  return passes ? [passes] : [];
}

/** Somebody who presses has the floor: the job asks again once that is refused. */
function pressing(prompt: Prompt, happens: string): Prompt {
  return {
    ...prompt,
    state: DRILL_PRESSED,
    question: [happens, DRILL_LINES.whatDoYouSay],
    brief: [happens, DRILL_LINES.whatDoYouSay],
    why: [DRILL_LINES.pressedWhy],
    expecting: { meanings: PRESSED_ANSWERS },
  };
}

/** The drill has stopped; what there is to learn of it comes next. */
function stopped(drill: DrillState, prompt: Prompt): Prompt {
  const fatal = drill.entries.find((entry) => entry.kind === 'fatal');
  const isFatal = fatal !== undefined && drill.over === 'fatal';
  // What happened is said again in the debrief; here, what it teaches.
  const teaches = isFatal ? [hazardById(fatal.hazard).lesson] : [DRILL_LINES.over];
  return {
    ...prompt,
    state: 'drill.stopped',
    notices: isFatal ? [] : prompt.notices,
    question: [...(isFatal ? [DRILL_LINES.fatal] : prompt.question), ...teaches, DRILL_LINES.toDebrief],
    brief: [...teaches, DRILL_LINES.toDebrief],
    why: [],
    safety: 'keepOut',
    expecting: { meanings: ['carryOn'] },
  };
}

/** Every sentence a drill may speak that is not the job's own. */
export function drillInventory(): readonly string[] {
  return [
    ...Object.values(DRILL_LINES),
    ...Object.values(SET_UP_LINES),
    ...Object.values(DEBRIEF_LINES),
    ...DRILL_LEVELS.map((level) => LEVELS[level].surroundings),
    ...Object.values<Hazard>(HAZARDS).flatMap(({ happens, lesson }) => [happens, lesson]),
    ...TRAP_IDS.flatMap(sayPassed),
  ];
}
