import { EVIDENCE } from '../../flows/diagnosis/evidence.ts';
import { heldStrandLost } from '../../flows/families/held-strand-lost.ts';
import { LINES } from '../../flows/lines.ts';
import type { Answering } from './person.ts';

/**
 * An invented afternoon: the left knotter of a small square baler lets go of every other string, because its
 * holder spring was set too loose. What the person at the machine answers to each question of the app.
 */
export interface Scenario {
  /** The person's first words. */
  readonly opening: string;
  /** What they say to a question, by a sentence of it; anything else is answered by the first button. */
  readonly answers: readonly (readonly [sentence: string, spoken: string])[];
  readonly cleanTies: number;
}

const { debris, holderSpring, density, holderPull, discWear, boxDrag } = heldStrandLost.checks as Record<
  string,
  { readonly ask: string }
>;

export const HOLDER_SET_LOOSE: Scenario = {
  opening: 'the left one keeps letting go',
  answers: [
    [EVIDENCE.knotPlace.ask, 'only the front end has a knot'],
    [EVIDENCE.nextBale.ask, 'the next bale ties by itself'],
    [EVIDENCE.endLook.ask, "it's cut off clean and square"],
    [EVIDENCE.whichKnotter.ask, "it's always the left hand one"],
    [EVIDENCE.whenItMisses.ask, 'it comes and goes with no pattern'],
    [asked(debris), 'clean all the way across'],
    [asked(holderSpring), 'it looks sound all over'],
    [asked(density), 'about the same as before'],
    [asked(holderPull), 'twenty two pounds'],
    [asked(discWear), "it's smooth with sharp notches"],
    [asked(boxDrag), 'both strings pull about even'],
    [LINES.acceptValue, "that's right"],
    [LINES.missRate, 'five out of ten'],
    [LINES.count, 'that was a good tie'],
    [LINES.closeJob, "that's right"],
  ],
  cleanTies: 5,
};

function asked(check: { readonly ask: string } | undefined): string {
  if (!check) throw new Error('The scenario names a check that the family does not have.');
  return check.ask;
}

/** Somebody who answers as the scenario has it. */
export function asIn({ answers, opening }: Scenario): Answering {
  return ({ question, buttons }) => {
    const scripted = answers.find(([sentence]) => question.includes(sentence));
    if (scripted) return scripted[1];
    if (/^\d+ of \d+$|^[a-z-]+ of [a-z-]+$/.test(question)) return 'that was a good tie';
    if (question === LINES.opening) return opening;
    return buttons[0] ?? 'say that again';
  };
}
