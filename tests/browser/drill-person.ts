import { hazardById, INTERRUPTION_IDS, PRESSURE_IDS, TRAP_IDS, trapById } from '../../flows/drill/hazards.ts';
import type { DrillLevel } from '../../flows/drill/levels.ts';
import { DEBRIEF_LINES, DRILL_LINES, SET_UP_LINES } from '../../flows/drill/lines.ts';
import { LEVEL_MEANINGS } from '../../flows/drill/set-up.ts';
import { LINES } from '../../flows/lines.ts';
import { MEANING_IDS, ruleOf, taughtForm } from '../../grammar/lexicon.ts';
import type { Answering, Screen } from './person.ts';

/** What a trainer tells a trainee. */
export interface DrillGiven {
  readonly level: DrillLevel;
  /** In the words it is said in: "four seventeen", or "pick a number for me". */
  readonly number: string;
  /** Confirms whatever step is asked for, true or not. */
  readonly confirmsBlindly?: boolean;
}

/**
 * Somebody who sets a drill up as told, answers what the machine of the drill shows, and meets every hazard, but for a
 * step made untrue where they confirm blindly.
 */
export function traineeOf({ level, number, confirmsBlindly = false }: DrillGiven): Answering {
  return (screen) => {
    const { question } = screen;
    if (question === SET_UP_LINES.level) return taughtForm(LEVEL_MEANINGS[level]);
    if (question === SET_UP_LINES.number) return number;
    if (question.includes(SET_UP_LINES.accept)) return taughtForm('yes');
    if (question.includes(LINES.alongsideAsk)) return taughtForm('no');
    return (
      toHazard(question, confirmsBlindly) ?? toFinding(screen) ?? screen.buttons[0] ?? taughtForm('sayAgain')
    );
  };
}

function toHazard(question: string, confirmsBlindly: boolean): string | undefined {
  const stands = (id: Parameters<typeof hazardById>[0]) => question.includes(hazardById(id).happens);
  // A drill that is over tells once more what happened.
  const isTold = [DRILL_LINES.toDebrief, DEBRIEF_LINES.late, DEBRIEF_LINES.fatal].some((line) =>
    question.includes(line),
  );
  if (isTold) return taughtForm('carryOn');
  if (PRESSURE_IDS.some(stands)) return taughtForm('pressure.refuse');
  if (INTERRUPTION_IDS.some(stands)) return taughtForm('void.notSure');
  const trap = TRAP_IDS.find(stands);
  if (!trap || confirmsBlindly) return undefined;
  const { passes, answeredBy } = trapById(trap);
  return passes ? 'wait' : taughtForm(answeredBy ?? 'void.movedOnTry');
}

/** The answer in whose words the finding is told: one that is on the screen before any other. */
function toFinding({ question, buttons }: Screen): string | undefined {
  const counted = question.split(`${DRILL_LINES.theyCount} `)[1];
  if (counted) return counted.replace(/ bales?\.?$/, '').toLowerCase();
  const { theyTell, youFind, theTie } = DRILL_LINES;
  const found = [theyTell, youFind, theTie].flatMap((lead) => question.split(`${lead} `)[1] ?? [])[0];
  if (!found) return undefined;
  const meanings = MEANING_IDS.filter((meaning) => ruleOf(meaning).readBack === found).map(taughtForm);
  return meanings.find((words) => buttons.some((label) => label.toLowerCase() === words)) ?? meanings[0];
}
