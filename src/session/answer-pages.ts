/** Large answers at once. */
export const ANSWERS_AT_ONCE = 4;

export interface AnswerPage<Answer> {
  readonly shown: readonly Answer[];
  /** How many steps there are; the last place of every step leads to the next. One where everything fits. */
  readonly pages: number;
}

/**
 * A step of the answers, likeliest first. Where they do not all fit, the last place is kept for "more answers".
 * @param page from 0; any whole number, taken round the steps
 */
export function answerPage<Answer>(answers: readonly Answer[], page: number): AnswerPage<Answer> {
  if (answers.length <= ANSWERS_AT_ONCE) return { shown: answers, pages: 1 };
  const size = ANSWERS_AT_ONCE - 1;
  const pages = Math.ceil(answers.length / size);
  const at = ((page % pages) + pages) % pages;
  return { shown: answers.slice(at * size, (at + 1) * size), pages };
}
