import { digitLikeNumbers, digitWords, eagerWords, graphPhrases, graphWords } from '../../grammar/lexicon.ts';
import { pronunciations } from '../../grammar/pronunciations.ts';
import type { VocabularySource } from './vocabulary.ts';

/** What the bundled model is made from: everything the grammar can hear now. */
export function grammarVocabulary(): VocabularySource {
  return {
    phrases: graphPhrases(),
    words: graphWords(),
    eager: eagerWords(),
    digits: digitWords(),
    digitLike: digitLikeNumbers(),
    pronunciations,
  };
}
