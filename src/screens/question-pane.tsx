import type { JSX } from 'preact';
import type { Prompt } from '../../flows/prompt.ts';
import { sayText } from '../../grammar/say.ts';

/**
 * The one question. A new question is a new node, so that nothing slides and a screen reader says it whole.
 */
export function QuestionPane({ prompt }: { readonly prompt: Prompt }): JSX.Element {
  const question = sayText(prompt.question);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: text that may scroll has to be reachable by keys.
    <section class="question-pane" aria-live="polite" aria-label="Question" tabIndex={0}>
      <h1 key={`${prompt.state}/${question}`} class="question" data-length={lengthOf(question)}>
        {question}
      </h1>
    </section>
  );
}

/** Longer questions are set smaller, never under what reads at a metre and a half. */
function lengthOf(question: string): 'short' | 'middling' | 'long' {
  if (question.length <= 48) return 'short';
  return question.length <= 110 ? 'middling' : 'long';
}
