import { DAY_PHRASES } from './calendar.ts';
import { activeMeanings, type ExpectedValue, type Expecting } from './expecting.ts';
import { allPhrases, phrasesFor, riskOf } from './lexicon.ts';
import type { Dimension } from './measurements.ts';
import { MISS_COUNTS, ROUND_NUMBERS, WHOLE_VALUES } from './value-phrases.ts';
import {
  BETWEEN_COUNTS,
  BETWEEN_PARTS,
  FRACTIONS,
  NUMBER_WORDS,
  RUNNAGE_UNITS,
  TWO_WORD_NUMBERS,
} from './value-words.ts';

/** The graph word for anything that is not a phrase: the recogniser's way of saying "other talk". */
export const UNKNOWN_WORD = '[unk]';

/** A phrase as one word of the recogniser's graph. */
export function graphToken(words: string): string {
  return words.replaceAll(' ', '_');
}

/**
 * Phrases that a lockout hangs on, and everything that can be said at all: what was taken for one of the first is heard once
 * more amongst the second, since it must be nearer to it than to any phrase, not only to those that are asked for.
 */
export const SECOND_LOOK: { readonly at: ReadonlySet<string>; readonly amongst: readonly string[] } = {
  at: new Set(
    allPhrases()
      .filter(({ meaning }) => riskOf(meaning) === 'confirm')
      .map(({ words }) => graphToken(words)),
  ),
  amongst: [...new Set(allPhrases().map(({ words }) => graphToken(words))), UNKNOWN_WORD],
};

const UNIT_WORDS_BY_DIMENSION: Readonly<Record<Dimension, readonly string[]>> = {
  length: ['inch', 'inches', 'foot', 'feet', 'thou', 'meter', 'meters', 'millimeter', 'millimeters'],
  force: ['pound', 'pounds', 'newton', 'newtons', 'kilo', 'kilos'],
  mass: ['pound', 'pounds', 'kilo', 'kilos'],
  rotation: ['turn', 'turns'],
  runnage: RUNNAGE_UNITS.map(graphToken),
};

/** Read off a rule or counted on a bolt, so spoken in halves to thirty-seconds. */
const IN_PARTS: readonly Dimension[] = ['length', 'rotation'];

/** The graph words a recogniser listens for in a state, always with the unknown word among them. */
export function recogniserList(expecting: Expecting): readonly string[] {
  const phrases = activeMeanings(expecting)
    .flatMap(phrasesFor)
    .map((phrase) => graphToken(phrase.words));
  return [...new Set([...phrases, ...valueWords(expecting.value), UNKNOWN_WORD])];
}

/** Whether an utterance may go on after a word that could end it, so that the ears wait longer before deciding. */
export function canGoOn(expecting: Expecting): boolean {
  return expecting.value !== undefined && expecting.value.kind !== 'day';
}

function valueWords(value: ExpectedValue | undefined): readonly string[] {
  switch (value?.kind) {
    case undefined:
      return [];
    case 'count':
      return [
        ...NUMBER_WORDS.filter((word) => word !== 'point'),
        ...[...TWO_WORD_NUMBERS, ...ROUND_NUMBERS].map(graphToken),
      ];
    case 'missCount':
      return [
        ...NUMBER_WORDS.filter((word) => word !== 'point'),
        ...[...TWO_WORD_NUMBERS, ...ROUND_NUMBERS, BETWEEN_COUNTS, ...MISS_COUNTS].map(graphToken),
      ];
    case 'day':
      return DAY_PHRASES.map(graphToken);
    case 'measurement':
      return [
        ...NUMBER_WORDS,
        ...UNIT_WORDS_BY_DIMENSION[value.dimension],
        ...[
          ...TWO_WORD_NUMBERS,
          ...ROUND_NUMBERS,
          ...WHOLE_VALUES[value.dimension],
          ...(IN_PARTS.includes(value.dimension) ? [...FRACTIONS, ...BETWEEN_PARTS] : []),
        ].map(graphToken),
      ];
  }
}
