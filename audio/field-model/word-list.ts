/**
 * Lists and answers of a model whose graph knows ordinary words. The app speaks in graph tokens, one a phrase; here they
 * become the words such a model is asked for, and what it heard becomes a token again where it is a whole phrase.
 */
import { type DecodedWord, UNKNOWN } from '../ears/heard-words.ts';

/**
 * Always listened for beside the phrases. The recogniser takes a list for a loop of words, so a denial that is none of them
 * could be passed over, and "it is not in my pocket" be heard without its "not".
 */
export const DENIALS = [
  'no',
  'not',
  'never',
  "isn't",
  "don't",
  "doesn't",
  "didn't",
  "haven't",
  "won't",
] as const;

/** A token in ordinary words. */
function spoken(token: string): string {
  return token.replaceAll('_', ' ');
}

/**
 * What to ask such a model to listen for.
 * @param list graph tokens
 * @param knows whether the model has a word; a phrase with a word that it lacks drops out
 */
export function wordEntries(list: readonly string[], knows: (word: string) => boolean): readonly string[] {
  const phrases = list.filter((token) => token !== UNKNOWN).map(spoken);
  return [...new Set([...phrases, ...DENIALS])].filter((phrase) => phrase.split(' ').every(knows));
}

/**
 * Joins words that are a phrase of the list, all of them together, to its token. Anything else stays in the words it was
 * heard in: a number is put together from them, and whatever else they are the grammar refuses.
 * @param list graph tokens
 */
export function joinedToPhrase(
  words: readonly DecodedWord[],
  list: readonly string[],
): readonly DecodedWord[] {
  const said = words.map(({ word }) => word).join(' ');
  const token = list.find((each) => spoken(each) === said);
  const [first, last] = [words[0], words.at(-1)];
  if (token === undefined || first === undefined || last === undefined) return words;
  const confidence = Math.min(...words.map((word) => word.confidence));
  return [{ word: token, startMs: first.startMs, endMs: last.endMs, confidence }];
}
