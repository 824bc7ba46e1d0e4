import type { Prompt } from '../../flows/prompt.ts';
import { type MeaningId, POINTING_MEANINGS, riskOf } from '../../grammar/lexicon.ts';
import { answerPage } from './answer-pages.ts';
import type { AnswersShown, Choice } from './view.ts';

/**
 * One page of the answers, as buttons. They carry numbers where every one of them is an answer that can be withdrawn:
 * a step of a lockout is confirmed by its own words and by nothing that merely points at them.
 * @param page from 0; any whole number, taken round the pages
 */
export function answersShown(prompt: Prompt, choices: readonly Choice[], page: number): AnswersShown {
  const all = [...(prompt.expecting.value ? (['number'] as const) : []), ...choices];
  const { shown, pages } = answerPage(all, page);
  const answers = shown.filter((answer) => answer !== 'number');
  const canBePointedAt = answers.length > 1 && answers.every(({ meaning }) => riskOf(meaning) === 'answer');
  return {
    shown: shown.map((answer) =>
      answer !== 'number' && canBePointedAt ? { ...answer, number: answers.indexOf(answer) + 1 } : answer,
    ),
    page: ((page % pages) + pages) % pages,
    pages,
  };
}

/** The answer that is pointed at, or undefined where the meaning points at none that is shown. */
export function pointedAt(meaning: MeaningId, { shown }: AnswersShown): MeaningId | undefined {
  const number = (POINTING_MEANINGS as readonly MeaningId[]).indexOf(meaning) + 1;
  if (number === 0) return undefined;
  return shown.find((answer): answer is Choice => answer !== 'number' && answer.number === number)?.meaning;
}

/** What can be said of the answers because they are shown. */
export function saidOfAnswers({ shown, pages }: AnswersShown): readonly MeaningId[] {
  const numbered = shown.filter((answer) => answer !== 'number' && answer.number !== undefined);
  return [...POINTING_MEANINGS.slice(0, numbered.length), ...(pages > 1 ? (['answers.more'] as const) : [])];
}
