/**
 * Words that are none of ours but sound nearly like one of our short ones: "down" beside "no", "go" beside "go back". Heard
 * as themselves they are refused, so that a short phrase need not be hard to hear for the sake of what resembles it.
 */
import type { Pronunciation } from './sphinx-dictionary.ts';
import type { GraphWord } from './vocabulary.ts';

/** Phrases of no more phones than this are short: a longer one holds evidence enough of its own. */
const SHORT_PHONES = 6;

/** Whether a phrase is so short that it needs decoys; they are beside it then. */
export function isShort({ spoken }: GraphWord): boolean {
  return spoken.reduce((sum, ways) => sum + Math.min(...ways.map(({ length }) => length)), 0) <= SHORT_PHONES;
}

/**
 * The pronunciations of the dictionary that one sound tells from a word of a short phrase (one phone another, one more or
 * one less), and those words alone, where the phrase has more than one. Whatever is a phrase by itself is none, nor what
 * is near a word that is taken on less evidence than others, such as "stop" or a number: that must rather be heard.
 */
export function decoyPronunciations(
  phrases: readonly GraphWord[],
  dictionary: ReadonlyMap<string, readonly Pronunciation[]>,
): readonly Pronunciation[] {
  const single = phrases.filter(({ spoken }) => spoken.length === 1);
  const short = phrases.filter((phrase) => !phrase.isEager && isShort(phrase));
  const whole = new Set(waysOf(single).map(keyOf));
  const wanted = new Set(waysOf(short).flatMap(formsOf));
  const unwanted = new Set(waysOf(single.filter(({ isEager }) => isEager)).flatMap(formsOf));
  const decoys = new Map<string, Pronunciation>();
  for (const way of [...dictionary.values()].flat()) {
    if (way.length > SHORT_PHONES || whole.has(keyOf(way))) continue;
    const forms = formsOf(way);
    if (forms.some((form) => wanted.has(form)) && !forms.some((form) => unwanted.has(form)))
      decoys.set(keyOf(way), way);
  }
  return [...decoys.keys()].sort().map((key) => decoys.get(key) as Pronunciation);
}

function waysOf(phrases: readonly GraphWord[]): readonly Pronunciation[] {
  return phrases.flatMap(({ spoken }) => spoken.flat());
}

function keyOf(way: Pronunciation): string {
  return way.join(' ');
}

const BLANK = '_';

/** A pronunciation, and it with one phone left open in every way: two that share a form are at most one sound apart. */
function formsOf(way: Pronunciation): readonly string[] {
  const replaced = way.map((_, i) => keyOf([...way.slice(0, i), BLANK, ...way.slice(i + 1)]));
  const added = Array.from({ length: way.length + 1 }, (_, i) =>
    keyOf([...way.slice(0, i), BLANK, ...way.slice(i)]),
  );
  return [keyOf(way), ...replaced, ...added];
}
