import type { Answer } from '../../flows/diagnosis/answer.ts';
import {
  type Belief,
  beliefsAfter,
  type Hypothesis,
  likelihood,
  PRIOR_BELIEFS,
} from '../../flows/diagnosis/beliefs.ts';
import type { Estimates } from '../../flows/diagnosis/estimates.ts';
import { excluded } from '../../flows/diagnosis/excluded.ts';
import { familyById } from '../../flows/families/all.ts';
import { SOMETHING_ELSE } from '../../flows/families/family.ts';
import type { BeliefPath, Suspect } from './card.ts';
import { findingText, tellsNothing } from './findings.ts';

/** Above this an explanation is still worth a thought. Expert estimate. */
export const SUSPECTED_ABOVE = 0.05;

/** How much commoner an answer has to be under a cause than on the whole to speak for it. */
const SPEAKS = 2;

const MOST_SUSPECTS = 6;
const MOST_LINES = 3;

/** What the answers leave of every explanation. What is excluded is what the voice counts as excluded. */
export function weighed(
  answers: readonly Answer[],
  estimates: Estimates,
): {
  readonly suspects: readonly Suspect[];
  readonly excluded: readonly Suspect[];
} {
  const beliefs = beliefsAfter(answers, estimates);
  const exclusions = excluded(answers);
  const exclusionOf = ({ family, cause }: Hypothesis) =>
    exclusions.find((each) => each.family === family && each.cause === cause);
  const likeliestFirst = [...beliefs].sort((a, b) => b.probability - a.probability);
  return {
    suspects: likeliestFirst
      .filter((belief) => belief.probability > SUSPECTED_ABOVE && !exclusionOf(belief))
      .slice(0, MOST_SUSPECTS)
      .map((belief) => suspectOf(belief, answersThatSpeakFor(belief, answers))),
    excluded: likeliestFirst.flatMap((belief) => {
      const by = exclusionOf(belief)?.by;
      return by
        ? [
            suspectOf(
              belief,
              answers.filter(({ question }) => by.includes(question)),
            ),
          ]
        : [];
    }),
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

/** The findings that make a cause more likely than it was before them. */
export function answersThatSpeakFor(hypothesis: Hypothesis, answers: readonly Answer[]): readonly Answer[] {
  return answers.filter((answer) => {
    if (tellsNothing(answer)) return false;
    const onTheWhole = PRIOR_BELIEFS.reduce(
      (sum, prior) => sum + prior.probability * likelihood(answer, prior),
      0,
    );
    return likelihood(answer, hypothesis) >= SPEAKS * onTheWhole;
  });
}

function suspectOf({ family, cause, probability }: Belief, answers: readonly Answer[]): Suspect {
  return {
    cause: causeText({ family, cause }),
    probability,
    because: answers.map(findingText),
  };
}
