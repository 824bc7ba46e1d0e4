/** What is asked beside a job, as trials: phrases of one topic, each in a state that really listens for it. */
import { DAY_PHRASES } from '../../grammar/calendar.ts';
import { activeMeanings, type Expecting } from '../../grammar/expecting.ts';
import { FIGURE_MEANINGS, type MeaningId, phrasesFor, RECALL_MEANINGS } from '../../grammar/lexicon.ts';
import { counting, countOpening, countUsing } from '../../grammar/phrases/counting.ts';
import { labels } from '../../grammar/phrases/figures.ts';
import { spoken } from './speak.ts';
import { allStates } from './states.ts';
import type { Trial } from './trials.ts';
import type { Voice } from './voices.ts';

interface Said {
  readonly text: string;
  /** The states that take it. */
  readonly states: readonly Expecting[];
}

export const TOPICS = {
  figures: saidFor(FIGURE_MEANINGS),
  record: saidFor(RECALL_MEANINGS),
  counting: saidFor(meaningsOf({ ...countOpening, ...counting })),
  'count in a proof': saidFor(meaningsOf(countUsing)),
  'twine labels': saidFor(meaningsOf(labels)),
  days: DAY_PHRASES.map((text) => ({
    text,
    states: allStates.filter(({ value }) => value?.kind === 'day'),
  })),
} as const satisfies Readonly<Record<string, readonly Said[]>>;

export type Topic = keyof typeof TOPICS;

export const TOPIC_NAMES = Object.keys(TOPICS) as readonly Topic[];

/**
 * @param count phrases spread evenly over the topic; all of them where there are no more
 * @param voices in turn
 */
export function topicTrials(topic: Topic, count: number, voices: readonly Voice[]): readonly Trial[] {
  const said: readonly Said[] = TOPICS[topic];
  const taken = Math.min(count, said.length);
  return Array.from({ length: taken }, (_, i): Trial => {
    const { text, states } = said[Math.floor((i * said.length) / taken)] as Said;
    const voice = voices[i % voices.length] as Voice;
    // A prime step, so that neighbours are not always asked in the same state.
    const expecting = states[(7 * i) % states.length] as Expecting;
    return {
      speaker: voice.name,
      text,
      sound: () => spoken(voice, text),
      bringsRoom: false,
      expecting,
      seed: i,
    };
  });
}

function saidFor(meanings: readonly MeaningId[]): readonly Said[] {
  return meanings.flatMap((meaning) =>
    phrasesFor(meaning).map(({ words: text }) => ({ text, states: statesTaking(meaning) })),
  );
}

function statesTaking(meaning: MeaningId): readonly Expecting[] {
  const asking = allStates.filter(({ meanings }) => meanings.includes(meaning));
  if (asking.length > 0) return asking;
  const anywhere = allStates.filter((state) => activeMeanings(state).includes(meaning));
  if (anywhere.length > 0) return anywhere;
  // What the count offers where the misses before a repair are asked for, see flows/miss-log/offer.ts.
  return allStates
    .filter(({ value }) => value?.kind === 'missCount')
    .map((state) => ({ ...state, meanings: [meaning, ...state.meanings] }));
}

function meaningsOf<Id extends MeaningId>(rules: Readonly<Record<Id, unknown>>): readonly Id[] {
  return Object.keys(rules) as Id[];
}
