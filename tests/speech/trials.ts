/** Plans of what is said, by whom, and what is listened for: the same plan for the same seed. */
import { UNKNOWN_WORD } from '../../grammar/compile.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { allPhrases, MEANING_IDS, type MeaningId } from '../../grammar/lexicon.ts';
import { seededRandom } from './engine-noise.ts';
import { otherTalk } from './other-talk.ts';
import { spokenValues } from './spoken-values.ts';
import { voices } from './voices.ts';

export interface Trial {
  readonly voice: (typeof voices)[number];
  readonly text: string;
  readonly expecting: Expecting;
  readonly seed: number;
}

/** Answers a state asks for, beside everything that is understood everywhere. */
const askedFor = 8;

/** Phrases drawn from the whole grammar, voices in turn, each in a state that asks for its meaning among others. */
export function phraseTrials(count: number, active: 'state' | 'everything', seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  const phrases = allPhrases();
  return Array.from({ length: count }, (_, i): Trial => {
    const phrase = drawn(phrases, random);
    const meanings =
      active === 'everything' ? [...MEANING_IDS] : [phrase.meaning, ...drawnMeanings(askedFor - 1, random)];
    return {
      voice: drawnInTurn(i),
      text: phrase.words,
      expecting: { meanings },
      seed: seed * 10_000 + i,
    };
  });
}

/** Numbers with what they count, each where a number of its kind is asked for. */
export function valueTrials(count: number, seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i): Trial => {
    const { text, value } = drawn(spokenValues, random);
    const meanings = drawnMeanings(askedFor, random);
    return { voice: drawnInTurn(i), text, expecting: { meanings, value }, seed: seed * 10_000 + 2_500 + i };
  });
}

/** Sentences that are no phrases, each in a state of its own. */
export function otherTalkTrials(count: number, seed: number): readonly Trial[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i): Trial => {
    const text = otherTalk[i % otherTalk.length] ?? UNKNOWN_WORD;
    return {
      voice: drawnInTurn(i + Math.floor(i / otherTalk.length)),
      text,
      expecting: { meanings: drawnMeanings(askedFor, random) },
      seed: seed * 10_000 + 5_000 + i,
    };
  });
}

function drawnMeanings(count: number, random: () => number): MeaningId[] {
  return Array.from({ length: count }, () => drawn(MEANING_IDS, random));
}

function drawn<T>(from: readonly T[], random: () => number): T {
  const found = from[Math.floor(random() * from.length)];
  if (found === undefined) throw new Error('There is nothing to draw from.');
  return found;
}

function drawnInTurn(i: number): (typeof voices)[number] {
  const voice = voices[i % voices.length];
  if (!voice) throw new Error('There are no voices.');
  return voice;
}
