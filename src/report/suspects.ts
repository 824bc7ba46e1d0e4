import type { Answer } from '../../flows/diagnosis/answer.ts';
import {
  type Belief,
  beliefsAfter,
  type Hypothesis,
  leadingFamily,
  likelihood,
  PRIOR_BELIEFS,
} from '../../flows/diagnosis/beliefs.ts';
import type { Estimates } from '../../flows/diagnosis/estimates.ts';
import { familyById } from '../../flows/families/all.ts';
import { SOMETHING_ELSE } from '../../flows/families/family.ts';
import type { BeliefPath, Suspect } from './card.ts';
import { findingText, tellsNothing } from './findings.ts';

/** At and below this a cause counts as excluded, above it as a suspect. Expert estimate. */
export const EXCLUDED_AT_MOST = 0.05;

/** How much rarer, or commoner, an answer has to be under a cause than on the whole to speak against it, or for it. */
const SPEAKS = 2;

const MOST_SUSPECTS = 6;
const MOST_LINES = 3;

/** What the answers leave of every explanation. */
export function weighed(
  answers: readonly Answer[],
  estimates: Estimates,
): {
  readonly suspects: readonly Suspect[];
  readonly excluded: readonly Suspect[];
} {
  const beliefs = beliefsAfter(answers, estimates);
  const likeliestFirst = [...beliefs].sort((a, b) => b.probability - a.probability);
  const leader = leadingFamily(beliefs);
  return {
    suspects: likeliestFirst
      .filter(({ probability }) => probability > EXCLUDED_AT_MOST)
      .slice(0, MOST_SUSPECTS)
      .map((belief) => suspectOf(belief, answersThatSpeak('for', belief, answers))),
    excluded: likeliestFirst
      .filter(
        ({ family, cause, probability }) =>
          family === leader && cause !== SOMETHING_ELSE && probability <= EXCLUDED_AT_MOST,
      )
      .map((belief) => suspectOf(belief, answersThatSpeak('against', belief, answers)))
      .filter(({ because }) => because.length > 0),
  };
}

/** How the explanations that end likeliest got there. */
export function beliefPath(answers: readonly Answer[], estimates: Estimates): BeliefPath {
  const stages = Array.from({ length: answers.length + 1 }, (_, told) =>
    beliefsAfter(answers.slice(0, told), estimates),
  );
  const likeliest = [...(stages.at(-1)?.entries() ?? [])]
    .sort(([, a], [, b]) => b.probability - a.probability)
    .slice(0, MOST_LINES);
  return {
    answers: answers.map(findingText),
    causes: likeliest.map(([place, hypothesis]) => ({
      cause: causeText(hypothesis),
      probabilities: stages.map((beliefs) => beliefs[place]?.probability ?? 0),
    })),
  };
}

/** A cause in plain words. */
export function causeText({ family, cause }: Hypothesis): string {
  return cause === SOMETHING_ELSE
    ? `something not on the list, of the kind: ${familyById(family).name}`
    : (familyById(family).causes[cause]?.name ?? cause);
}

/** The findings that make a cause more likely, or less, than it was before them. */
export function answersThatSpeak(
  which: 'for' | 'against',
  hypothesis: Hypothesis,
  answers: readonly Answer[],
): readonly Answer[] {
  return answers.filter((answer) => {
    if (tellsNothing(answer)) return false;
    const here = likelihood(answer, hypothesis);
    const onTheWhole = PRIOR_BELIEFS.reduce(
      (sum, prior) => sum + prior.probability * likelihood(answer, prior),
      0,
    );
    return which === 'for' ? here >= SPEAKS * onTheWhole : here * SPEAKS <= onTheWhole;
  });
}

function suspectOf({ family, cause, probability }: Belief, answers: readonly Answer[]): Suspect {
  return {
    cause: causeText({ family, cause }),
    probability,
    because: answers.map(findingText),
  };
}
