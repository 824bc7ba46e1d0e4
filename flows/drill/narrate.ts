import { ruleOf } from '../../grammar/lexicon.ts';
import { type Say, sayOutOf } from '../../grammar/say.ts';
import type { JobContext } from '../job-context.ts';
import { DRILL_OVER, type Prompt } from '../prompt.ts';
import { sayMeasurement } from '../sayings.ts';
import { type DrillEntry, type DrillState, happeningOf, isTrap, lessonOf, shownNow } from './drill.ts';
import type { Finding } from './finding.ts';
import { INTERRUPTIONS, interruptionById, TRAPS, trapById } from './hazards.ts';
import { DRILL_LINES } from './lines.ts';

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
  const { trap, interruption } = drill;
  const last = drill.entries.at(-1);
  const standing: Say = [
    ...(interruption?.sinceMs === undefined ? [] : [interruptionById(interruption.id).happens]),
    ...(trap ? [trapById(trap.id).happens] : []),
  ];
  const shown = shownNow(drill, prompt, context);
  const found = shown ? sayFinding(shown, drill.setup.level === 2 && hasPicture(shown)) : [];
  return {
    ...prompt,
    notices: [
      ...(drill.entries.length === 0 ? [DRILL_LINES.begins] : []),
      ...prompt.notices,
      ...(last?.kind === 'passed' ? sayPassed(last) : []),
    ],
    // What just happened is said before the question; what is found, after it.
    question: [...standing, ...prompt.question, ...found],
    brief: [...standing, ...prompt.brief, ...found],
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

function sayPassed({ hazard }: Extract<DrillEntry, { kind: 'passed' | 'happened' }>): Say {
  const passes = isTrap(hazard) ? trapById(hazard).passes : undefined;
  return passes ? [passes] : [];
}

function stopped(drill: DrillState, prompt: Prompt): Prompt {
  const fatal = drill.entries.find((entry) => entry.kind === 'fatal');
  const say: Say =
    fatal && drill.over === 'fatal'
      ? [DRILL_LINES.fatal, happeningOf(fatal.hazard), lessonOf(fatal.hazard)]
      : [...prompt.question, DRILL_LINES.over];
  return {
    ...prompt,
    state: DRILL_OVER,
    notices: drill.over === 'fatal' ? [] : prompt.notices,
    question: say,
    brief: say,
    why: [],
    safety: 'keepOut',
    expecting: { meanings: [] },
  };
}

/** Every sentence a drill may speak that is not the job's own. */
export function drillInventory(): readonly string[] {
  return [
    ...Object.values(DRILL_LINES),
    ...Object.values(TRAPS).flatMap((trap) => [
      trap.happens,
      trap.lesson,
      ...('passes' in trap ? [trap.passes] : []),
    ]),
    ...Object.values(INTERRUPTIONS).flatMap(({ happens, lesson }) => [happens, lesson]),
  ];
}
