/** Turns what can be said into words of the recogniser's graph, each with every way to pronounce it. */
import { graphToken } from '../../grammar/compile.ts';
import type { Pronunciation } from './sphinx-dictionary.ts';

export interface VocabularySource {
  /** Each of these is heard as a whole: it becomes one word of the graph. */
  readonly phrases: readonly string[];
  /** Ordinary single words: numbers, fractions, units. */
  readonly words: readonly string[];
  /** Those of both that are taken on less evidence than others. */
  readonly eager: readonly string[];
  /** Numbers of one digit, and those that are easily taken for one of them: a digit is the likelier. */
  readonly digits: readonly string[];
  readonly digitLike: readonly string[];
  /** Word to pronunciations (phones with spaces between), for words the dictionary lacks or has otherwise. */
  readonly pronunciations: Readonly<Record<string, readonly string[]>>;
}

export interface GraphWord {
  /** The name the recogniser returns: the phrase, its spaces replaced by underscores. */
  readonly label: string;
  /** For each spoken word in order, the ways to pronounce it (never none). */
  readonly spoken: readonly (readonly Pronunciation[])[];
  readonly isEager: boolean;
  /** Missing for what is neither. */
  readonly number?: 'digit' | 'digitLike';
}

/**
 * Every phrase and word with its pronunciations. Our own list comes before the dictionary and replaces its entry.
 * @throws when a word has no pronunciation (the sentence names the word and its phrase) or an entry is ill-formed.
 */
export function graphVocabulary(
  source: VocabularySource,
  dictionary: ReadonlyMap<string, readonly Pronunciation[]>,
): readonly GraphWord[] {
  const pronounce = (word: string, phrase: string): readonly Pronunciation[] => {
    const own = source.pronunciations[word]?.map((text) => text.split(' '));
    const found = own ?? dictionary.get(word);
    if (!found || found.length === 0) {
      throw new Error(
        `The word "${word}" of "${phrase}" has no pronunciation: add it to grammar/pronunciations.ts.`,
      );
    }
    return found;
  };
  const eager = new Set(source.eager);
  const numbers = new Map<string, 'digit' | 'digitLike'>([
    ...source.digitLike.map((number) => [number, 'digitLike'] as const),
    ...source.digits.map((number) => [number, 'digit'] as const),
  ]);
  const entries = [...new Set([...source.phrases, ...source.words])].sort();
  return entries.map((phrase) => {
    if (!/^[a-z0-9'-]+( [a-z0-9'-]+)*$/.test(phrase)) {
      throw new Error(`"${phrase}" is not lower-case words with single spaces between them.`);
    }
    const number = numbers.get(phrase);
    return {
      label: graphToken(phrase),
      spoken: phrase.split(' ').map((word) => pronounce(word, phrase)),
      isEager: eager.has(phrase),
      ...(number ? { number } : {}),
    };
  });
}
