import type { QuestionId } from '../../flows/diagnosis/answer.ts';
import { beliefsAfter, likelihood } from '../../flows/diagnosis/beliefs.ts';
import { questionOfState } from '../../flows/diagnosis/question-of-state.ts';
import type { JobContext } from '../../flows/job-context.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { type Wording, worded } from '../../flows/wording.ts';
import { type MeaningId, taughtForm } from '../../grammar/lexicon.ts';
import type { Choice } from './view.ts';

/** The answers asked for, likeliest first by what is believed now, in the words prompts teach. */
export function choicesFor(prompt: Prompt, context: JobContext, wording: Wording): readonly Choice[] {
  const { meanings } = prompt.expecting;
  const question = questionOfState(prompt.state);
  const ordered = question ? likeliestFirst(meanings, question, context) : meanings;
  return ordered.map((meaning) => ({ meaning, label: sentenceCase(worded(taughtForm(meaning), wording)) }));
}

function likeliestFirst(meanings: readonly MeaningId[], question: QuestionId, { answers }: JobContext) {
  const beliefs = beliefsAfter(answers);
  const chance = new Map(
    meanings.map((said) => [
      said,
      beliefs.reduce((sum, belief) => sum + belief.probability * likelihood({ question, said }, belief), 0),
    ]),
  );
  return [...meanings].sort((a, b) => (chance.get(b) ?? 0) - (chance.get(a) ?? 0));
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1).replace(/\bi\b/g, 'I').replace(/\bi'/g, "I'");
}
