/** Every way to say a graph word, as sequences of the model's phones with its neighbours taken into account. */
import type { InventoryPhone, PhoneInventory, WordPlace } from './phone-inventory.ts';
import type { Pronunciation } from './sphinx-dictionary.ts';
import { type PhoneDefinitions, wordPosition } from './sphinx-phone-definitions.ts';
import type { GraphWord } from './vocabulary.ts';

/** Stands in a path where a speaker may pause: between the words of a phrase. */
export const pause = 'pause';
export type PathStep = InventoryPhone | typeof pause;

/** More than this many ways to say one phrase would make a graph out of proportion. */
const mostPaths = 4096;

export function phonePaths(
  word: GraphWord,
  phones: PhoneDefinitions,
  inventory: PhoneInventory,
): readonly (readonly PathStep[])[] {
  const count = word.spoken.reduce((product, ways) => product * ways.length, 1);
  if (count > mostPaths) {
    throw new Error(`"${word.label}" has ${count} pronunciations: shorten it or give its words fewer.`);
  }
  let choices: (readonly Pronunciation[])[] = [[]];
  for (const ways of word.spoken) choices = choices.flatMap((chosen) => ways.map((way) => [...chosen, way]));
  return choices.map((choice) => pathOf(choice, word.label, phones, inventory));
}

function pathOf(
  pronunciations: readonly Pronunciation[],
  label: string,
  phones: PhoneDefinitions,
  inventory: PhoneInventory,
): readonly PathStep[] {
  const silence = baseNumber(phones, 'SIL', label);
  const flat = pronunciations.flatMap((pronunciation, wordIndex) =>
    pronunciation.map((name, i) => ({
      base: baseNumber(phones, name, label),
      position: placeOf(i, pronunciation.length, wordPosition),
      pauseBefore: i === 0 && wordIndex > 0,
    })),
  );
  return flat.flatMap(({ base, position, pauseBefore }, i): PathStep[] => {
    const left = flat[i - 1]?.base ?? silence;
    const right = flat[i + 1]?.base ?? silence;
    const place = placeOf<WordPlace>(i, flat.length, placeNames);
    const phone = inventory.modelled(phones.modelInContext(base, left, right, position), place);
    return pauseBefore ? [pause, phone] : [phone];
  });
}

const placeNames = { internal: 'internal', begin: 'begin', end: 'end', single: 'singleton' } as const;

function placeOf<T>(
  index: number,
  length: number,
  names: Record<'internal' | 'begin' | 'end' | 'single', T>,
): T {
  if (length === 1) return names.single;
  if (index === 0) return names.begin;
  return index === length - 1 ? names.end : names.internal;
}

function baseNumber(phones: PhoneDefinitions, name: string, label: string): number {
  const number = phones.baseNumber(name);
  if (number === undefined)
    throw new Error(`"${label}" uses the phone ${name}, which the acoustic model lacks.`);
  return number;
}
