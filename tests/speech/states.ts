/** What the app listens for in each of its states: every prompt of the charts, the figures and the count. */
import { INPUT_IDS, type InputId, inputOf } from '../../flows/figures-asked/inputs.ts';
import { jobMachine } from '../../flows/job.ts';
import type { Ask } from '../../flows/prompt.ts';
import type { ExpectedValue, Expecting } from '../../grammar/expecting.ts';
import { MEANING_IDS, type MeaningId, POINTING_MEANINGS, riskOf } from '../../grammar/lexicon.ts';
import { counting } from '../../grammar/phrases/counting.ts';
import { answerPage } from '../../src/session/answer-pages.ts';

interface Node {
  readonly meta?: Partial<Ask> | undefined;
  readonly states: Readonly<Record<string, Node>>;
}

function askedIn({ meta, states }: Node): Expecting[] {
  return [...(meta?.expecting ? [meta.expecting] : []), ...Object.values(states).flatMap(askedIn)];
}

/** As flows/figures-asked/dialogue.ts asks for an input. */
function askedFor(id: InputId): Expecting {
  const { takes } = inputOf(id);
  if (takes.kind === 'choice') return { meanings: takes.meanings };
  const value: ExpectedValue =
    takes.kind === 'measurement' ? { kind: takes.kind, dimension: takes.dimension } : { kind: takes.kind };
  return { meanings: ['notSure'], value };
}

const counted: Expecting = {
  meanings: Object.keys(counting) as MeaningId[],
  value: { kind: 'count' },
};

/** What src/session/answers-shown.ts adds: numbers where all the answers can be withdrawn, and more of them. */
function withScreen(expecting: Expecting): Expecting {
  const { meanings } = expecting;
  const canBePointedAt = meanings.length > 1 && meanings.every((meaning) => riskOf(meaning) === 'answer');
  const { shown, pages } = answerPage(meanings, 0);
  const numbers = canBePointedAt ? POINTING_MEANINGS.slice(0, shown.length) : [];
  return { ...expecting, onScreen: pages > 1 ? [...numbers, 'answers.more'] : numbers };
}

/** Every state once, by what it listens for. */
export const allStates: readonly Expecting[] = [
  ...new Map(
    [...askedIn(jobMachine.root), ...INPUT_IDS.map(askedFor), counted]
      .map(withScreen)
      .map((expecting) => [JSON.stringify(expecting), expecting]),
  ).values(),
];

/** Every phrase at once, as no state ever asks. */
export const everything: Expecting = { meanings: [...MEANING_IDS] };
