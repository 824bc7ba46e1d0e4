import {
  allPhrases,
  graphPhrases,
  graphWords,
  MEANING_IDS,
  type Phrase,
  phrasesFor,
} from '../../grammar/lexicon.ts';

/** A way of saying something that a model cannot hear, because it lacks words of it. */
export interface LostPhrase {
  readonly words: string;
  readonly lacking: readonly string[];
  /** Another way to say the very same that it can hear, the taught one where that can be; missing where there is none. */
  readonly instead?: string;
}

/** A meaning whose taught form a model cannot hear. */
export interface TaughtGap {
  readonly taught: string;
  /** A form of it that the model can hear; missing where there is none and only its button gives it. */
  readonly instead?: string;
}

/** How much of the grammar a model of ordinary words can hear. */
export interface Coverage {
  /** Words of the grammar that the model lacks, in order of the alphabet. */
  readonly lackingWords: readonly string[];
  readonly lostPhrases: readonly LostPhrase[];
  readonly taughtGaps: readonly TaughtGap[];
}

/** @param vocabulary the ordinary words of a model */
export function coverageOf(vocabulary: ReadonlySet<string>): Coverage {
  const lackingIn = (words: string) => words.split(' ').filter((word) => !vocabulary.has(word));
  const isHeard = ({ words }: Phrase) => lackingIn(words).length === 0;
  const lost = allPhrases().flatMap((phrase): LostPhrase[] => {
    if (isHeard(phrase)) return [];
    const instead = phrasesFor(phrase.meaning).find((other) => isHeard(other) && saysTheSame(phrase, other));
    return [
      {
        words: phrase.words,
        lacking: lackingIn(phrase.words),
        ...(instead ? { instead: instead.words } : {}),
      },
    ];
  });
  const ofMeanings = new Set(allPhrases().map(({ words }) => words));
  const lostValues = [...graphPhrases(), ...graphWords()]
    .filter((words) => !ofMeanings.has(words))
    .map((words) => ({ words, lacking: lackingIn(words) }))
    .filter(({ lacking }) => lacking.length > 0);
  const lostPhrases = [...lost, ...lostValues];
  return {
    lackingWords: [...new Set(lostPhrases.flatMap(({ lacking }) => lacking))].sort(),
    lostPhrases,
    taughtGaps: MEANING_IDS.flatMap((meaning): TaughtGap[] => {
      const taught = phrasesFor(meaning)[0];
      if (!taught || isHeard(taught)) return [];
      const instead = phrasesFor(meaning).find(isHeard);
      return [{ taught: taught.words, ...(instead ? { instead: instead.words } : {}) }];
    }),
  };
}

function saysTheSame(a: Phrase, b: Phrase): boolean {
  return a.side === b.side && a.part === b.part;
}
