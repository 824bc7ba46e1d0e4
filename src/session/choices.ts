import type { QuestionId } from '../../flows/diagnosis/answer.ts';
import { beliefsAfter, likelihood } from '../../flows/diagnosis/beliefs.ts';
import { EVIDENCE } from '../../flows/diagnosis/evidence.ts';
import { FAMILY_IDS } from '../../flows/families/family.ts';
import type { JobContext } from '../../flows/job-context.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { type MeaningId, taughtForm } from '../../grammar/lexicon.ts';
import type { Choice } from './view.ts';

/** The answers asked for, likeliest first by what is believed now, in the words prompts teach. */
export function choicesFor(prompt: Prompt, context: JobContext): readonly Choice[] {
  const { meanings } = prompt.expecting;
  const question = questionOf(prompt.state);
  const ordered = question ? likeliestFirst(meanings, question, context) : meanings;
  return ordered.map((meaning) => ({ meaning, label: sentenceCase(taughtForm(meaning)) }));
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

/** The question a state asks, from the chart's own name of it; undefined for states that ask something else. */
function questionOf(state: string): QuestionId | undefined {
  const [, , group = '', id = ''] = state.split('.');
  if (group === 'triage' && Object.hasOwn(EVIDENCE, id)) return `evidence.${id as keyof typeof EVIDENCE}`;
  const family = FAMILY_IDS.find((name) => name === group);
  return family && id !== 'choosing' ? `check.${family}.${id}` : undefined;
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1).replace(/\bi\b/g, 'I').replace(/\bi'/g, "I'");
}
