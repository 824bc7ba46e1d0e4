/** Plans of what is said, by whom, and what is listened for: the same plan for the same seed. */

import { seededRandom } from '../../flows/drill/seeded.ts';
import { activeMeanings, type Expecting } from '../../grammar/expecting.ts';
import { allPhrases, type Phrase } from '../../grammar/lexicon.ts';
import { understand } from '../../grammar/understand.ts';
import { otherTalk } from './other-talk.ts';
import { drawn, shuffled } from './random.ts';
import {
  type Recording,
  recordedNumbers,
  recordedTalk,
  recordedWords,
  soundOf,
  titleOf,
} from './recordings.ts';
import { spoken, withoutEdges } from './speak.ts';
import { spokenValues } from './spoken-values.ts';
import { allStates, everything } from './states.ts';
import type { Voice } from './voices.ts';

export interface Trial {
  readonly speaker: string;
  readonly text: string;
  sound(): Float32Array;
  /** The sound has a room of its own in it, which was there before and goes on after it. */
  readonly bringsRoom: boolean;
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
  return {
    speaker: voice.name,
    text,
    sound: () => spoken(voice, text),
    bringsRoom: false,
    expecting,
    seed,
  };
}

/** People's whole numbers, where a count is asked for. */
export function recordedNumberTrials(seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return recordedNumbers.map((recording, i) =>
    recordedTrial(recording, drawn(countingStates, random), seed * 10_000 + 6_000 + i),
  );
}

/** People's single words: those that are phrases or numbers, or the others, each in a state that would take the former. */
export function recordedWordTrials(
  which: 'commands' | 'no commands',
  count: number,
  seed: number,
): readonly Trial[] {
  const random = seededRandom(seed);
  return shuffled(recordedWords(), random)
    .map((recording) => ({ recording, states: statesFor(recording.text ?? '') }))
    .filter(({ states }) => states.length > 0 === (which === 'commands'))
    .slice(0, count)
    .map(({ recording, states }, i) =>
      recordedTrial(
        recording,
        drawn(states.length > 0 ? states : allStates, random),
        seed * 10_000 + 7_000 + i,
      ),
    );
}

/** People's sentences, each in a state of its own. */
export function recordedTalkTrials(count: number, seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return shuffled(recordedTalk, random)
    .slice(0, count)
    .map((recording, i) => recordedTrial(recording, drawn(allStates, random), seed * 10_000 + 8_000 + i));
}

function recordedTrial(recording: Recording, expecting: Expecting, seed: number): Trial {
  const { isStudio } = recording;
  return {
    speaker: recording.speaker,
    text: titleOf(recording),
    sound: () => (isStudio ? withoutEdges(soundOf(recording)) : soundOf(recording)),
    bringsRoom: !isStudio,
    expecting,
    seed,
  };
}

const countingStates = allStates.filter(({ value }) => value?.kind === 'count');

/** Where a word is understood, if anywhere. */
function statesFor(word: string): readonly Expecting[] {
  const phrase = allPhrases().find(({ words }) => words === word);
  if (phrase) return statesTaking(phrase);
  const isNumber = countingStates.some((state) => understand(word, state).outcome === 'understood');
  return isNumber ? countingStates : [];
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
