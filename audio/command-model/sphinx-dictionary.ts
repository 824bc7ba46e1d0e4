/**
 * Reads a pronunciation dictionary in Sphinx's form: a word, then its phones, on a line; `word(2)` for a variant.
 * Source of the format: the CMU Pronouncing Dictionary's Sphinx edition, read by `dict_read` in
 * pocketsphinx/src/libpocketsphinx/dict.c (CMU Sphinx).
 */

/** A pronunciation: names of base phones, in order. */
export type Pronunciation = readonly string[];

/** Every pronunciation of every word, the dictionary's order kept. */
export function readDictionary(text: string): ReadonlyMap<string, readonly Pronunciation[]> {
  const entries = new Map<string, Pronunciation[]>();
  for (const line of text.split('\n')) {
    const [entry, ...phones] = line.trim().split(/\s+/);
    if (!entry || phones.length === 0) continue;
    const word = entry.replace(/\(\d+\)$/, '');
    const known = entries.get(word);
    if (known) known.push(phones);
    else entries.set(word, [phones]);
  }
  return entries;
}
