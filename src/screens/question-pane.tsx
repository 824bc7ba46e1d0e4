import type { JSX } from 'preact';
import type { Prompt } from '../../flows/prompt.ts';
import { asRead } from './as-read.ts';

/**
 * The one question, with whatever has to be done first above it in smaller type. A new question is a new node, so
 * that nothing slides and a screen reader says it whole.
 */
export function QuestionPane({ prompt }: { readonly prompt: Prompt }): JSX.Element {
  const { before, question } = partsOf(prompt);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: text that may scroll has to be reachable by keys.
    <section class="question-pane" aria-live="polite" aria-label="Question" tabIndex={0}>
      <div key={`${prompt.state}/${before}/${question}`}>
        {before === '' ? null : <p class="before-question">{before}</p>}
        <h1 class="question" data-length={lengthOf(before + question)}>
          {question}
        </h1>
      </div>
    </section>
  );
}

/** Where the short form ends the long one, the rest is what has to be done before it can be answered. */
export function partsOf({ question, brief }: Pick<Prompt, 'question' | 'brief'>): {
  readonly before: string;
  readonly question: string;
} {
  const at = question.length - brief.length;
  const endsInBrief = at > 0 && brief.every((fragment, index) => question[at + index] === fragment);
  return endsInBrief
    ? { before: asRead(question.slice(0, at)), question: asRead(brief) }
    : { before: '', question: asRead(question) };
}

/** Longer questions are set smaller, never under what reads at a metre and a half. */
function lengthOf(question: string): 'short' | 'middling' | 'long' {
  if (question.length <= 48) return 'short';
  return question.length <= 110 ? 'middling' : 'long';
}
