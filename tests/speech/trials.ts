/** Plans of what is said, by whom, and what is listened for: the same plan for the same seed. */

import { seededRandom } from '../../flows/drill/seeded.ts';
import { activeMeanings, type Expecting } from '../../grammar/expecting.ts';
import { allPhrases, type Phrase } from '../../grammar/lexicon.ts';
import { otherTalk } from './other-talk.ts';
import { drawn, shuffled } from './random.ts';
import { spoken } from './speak.ts';
import { spokenValues } from './spoken-values.ts';
import { allStates, everything } from './states.ts';
import type { Voice } from './voices.ts';

export interface Trial {
  readonly speaker: string;
  readonly text: string;
  /** The words alone, without the room. */
  sound(): Float32Array;
  readonly expecting: Expecting;
  readonly seed: number;
}

/** What a phrase is listened for among. */
export type Active = 'state' | 'everything';

/** Phrases of the whole grammar, each once before any comes twice, voices in turn, each in a state that takes it. */
export function phraseTrials(
  count: number,
  active: Active,
  voices: readonly Voice[],
  seed: number,
): readonly Trial[] {
  const random = seededRandom(seed);
  const phrases = shuffled(allPhrases(), random);
  return Array.from({ length: count }, (_, i): Trial => {
    const phrase = phrases[i % phrases.length] as Phrase;
    const expecting = active === 'everything' ? everything : drawn(statesTaking(phrase), random);
    return spokenTrial(voiceInTurn(voices, i), phrase.words, expecting, seed * 10_000 + i);
  });
}

/** Numbers with what they count, each where a number of its kind is asked for. */
export function valueTrials(count: number, voices: readonly Voice[], seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i): Trial => {
    const { text, value } = drawn(spokenValues, random);
    const kind = JSON.stringify(value);
    const states = allStates.filter((state) => JSON.stringify(state.value) === kind);
    return spokenTrial(voiceInTurn(voices, i), text, drawn(states, random), seed * 10_000 + 2_500 + i);
  });
}

/** Sentences that are no phrases, each in a state of its own. */
export function otherTalkTrials(count: number, voices: readonly Voice[], seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i): Trial => {
    const voice = voiceInTurn(voices, i + Math.floor(i / otherTalk.length));
    const text = otherTalk[i % otherTalk.length] as string;
    return spokenTrial(voice, text, drawn(allStates, random), seed * 10_000 + 5_000 + i);
  });
}

function spokenTrial(voice: Voice, text: string, expecting: Expecting, seed: number): Trial {
  return { speaker: voice.name, text, sound: () => spoken(voice, text), expecting, seed };
}

function statesTaking({ meaning }: Phrase): readonly Expecting[] {
  const asking = allStates.filter(({ meanings }) => meanings.includes(meaning));
  if (asking.length > 0) return asking;
  const anywhere = allStates.filter((state) => activeMeanings(state).includes(meaning));
  // What the screen alone adds, while an aside is shown.
  return anywhere.length > 0
    ? anywhere
    : allStates.map((state) => ({ ...state, onScreen: [...(state.onScreen ?? []), meaning] }));
}

function voiceInTurn(voices: readonly Voice[], i: number): Voice {
  const voice = voices[i % voices.length];
  if (!voice) throw new Error('There are no voices.');
  return voice;
}
