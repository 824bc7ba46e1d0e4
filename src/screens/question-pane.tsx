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

/**
 * Where the short form ends the long one, the rest is what has to be done before it can be answered. A remedy ends in
 * the one thing to do now; what was found comes before it.
 */
export function partsOf({ state, question, brief }: Pick<Prompt, 'state' | 'question' | 'brief'>): {
  readonly before: string;
  readonly question: string;
} {
  const at = question.length - (state.startsWith('job.inquiry.remedy') ? 1 : brief.length);
  const endsInBrief =
    at > 0 &&
    question.slice(at).every((fragment, index) => fragment === brief.at(index - question.length + at));
  return endsInBrief
    ? { before: asRead(question.slice(0, at)), question: asRead(question.slice(at)) }
    : { before: '', question: asRead(question) };
}

/** Longer questions are set smaller, never under what reads at a metre and a half. */
function lengthOf(question: string): 'short' | 'middling' | 'long' {
  if (question.length <= 48) return 'short';
  return question.length <= 110 ? 'middling' : 'long';
}
