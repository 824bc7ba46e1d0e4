import { hazardById, INTERRUPTION_IDS, PRESSURE_IDS, TRAP_IDS, trapById } from '../../flows/drill/hazards.ts';
import type { DrillLevel } from '../../flows/drill/levels.ts';
import { DRILL_LINES, SET_UP_LINES } from '../../flows/drill/lines.ts';
import { LEVEL_MEANINGS } from '../../flows/drill/set-up.ts';
import { LINES } from '../../flows/lines.ts';
import { MEANING_IDS, ruleOf, taughtForm } from '../../grammar/lexicon.ts';
import type { Answering, Screen } from './person.ts';

/** What a trainer tells a trainee. */
export interface DrillGiven {
  readonly level: DrillLevel;
  /** In the words it is said in: "four seventeen", or "pick a number for me". */
  readonly number: string;
}

/** Somebody who sets a drill up as told, answers what the machine of the drill shows, and meets every hazard. */
export function carefulIn({ level, number }: DrillGiven): Answering {
  return (screen) => {
    const { question } = screen;
    if (question === SET_UP_LINES.level) return taughtForm(LEVEL_MEANINGS[level]);
    if (question === SET_UP_LINES.number) return number;
    if (question.includes(SET_UP_LINES.accept)) return taughtForm('yes');
    if (question.includes(LINES.alongsideAsk)) return taughtForm('no');
    return toHazard(question) ?? toFinding(screen) ?? screen.buttons[0] ?? taughtForm('sayAgain');
  };
}

function toHazard(question: string): string | undefined {
  const stands = (id: Parameters<typeof hazardById>[0]) => question.includes(hazardById(id).happens);
  if (PRESSURE_IDS.some(stands)) return taughtForm('pressure.refuse');
  // The stopped drill says once more what happened.
  if (question.includes(DRILL_LINES.toDebrief)) return taughtForm('carryOn');
  if (INTERRUPTION_IDS.some(stands)) return taughtForm('void.notSure');
  const trap = TRAP_IDS.find(stands);
  if (!trap) return undefined;
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
