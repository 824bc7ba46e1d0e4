import { describe, expect, test } from 'vitest';
import { canGoOn, graphToken, recogniserList, SECOND_LOOK, UNKNOWN_WORD } from '../../grammar/compile.ts';
import { activeMeanings } from '../../grammar/expecting.ts';
import {
  allPhrases,
  digitLikeNumbers,
  digitWords,
  eagerWords,
  graphPhrases,
  graphWords,
  phrasesFor,
  riskOf,
} from '../../grammar/lexicon.ts';
import { INQUIRY_STATES } from './states.ts';

const GRAPH = new Set([...graphPhrases().map(graphToken), ...graphWords(), UNKNOWN_WORD]);

describe.each(INQUIRY_STATES)('the recogniser list of %s', (_, expecting) => {
  const list = recogniserList(expecting);

  test('holds every phrase of the state, and nothing twice', () => {
    for (const { words } of activeMeanings(expecting).flatMap(phrasesFor)) {
      expect(list).toContain(graphToken(words));
    }
    expect(new Set(list).size).toBe(list.length);
  });

  test('holds the unknown word, so that other talk need not be taken for a phrase', () => {
    expect(list).toContain(UNKNOWN_WORD);
  });

  test('holds only words the graph was built with', () => {
    expect(list.filter((word) => !GRAPH.has(word))).toEqual([]);
  });

  test('holds numbers only where a number is asked for', () => {
    expect(list.includes('seventeen')).toBe(expecting.value !== undefined);
    expect(canGoOn(expecting)).toBe(expecting.value !== undefined);
  });
});

test('every number that has a likelihood of its own is heard, and is a value', () => {
  const numbers = [...digitWords(), ...digitLikeNumbers()];
  expect(numbers.filter((number) => !GRAPH.has(graphToken(number)))).toEqual([]);
  expect(numbers.filter((number) => !eagerWords().includes(number))).toEqual([]);
  expect(new Set(numbers).size).toBe(numbers.length);
});

test('only the units of what is asked are listened for', () => {
  const force = recogniserList({ meanings: [], value: { kind: 'measurement', dimension: 'force' } });
  expect(force).toContain('pounds');
  expect(force).not.toContain('inches');
});

test('a day is heard as one word, and nothing follows it', () => {
  const expecting = { meanings: [], value: { kind: 'day' } } as const;
  expect(recogniserList(expecting)).toEqual(expect.arrayContaining(['june_tenth', 'february_thirtieth']));
  expect(recogniserList(expecting)).not.toContain('seventeen');
  expect(canGoOn(expecting)).toBe(false);
});

test('a count of misses has no fractions and no units', () => {
  const count = recogniserList({ meanings: [], value: { kind: 'missCount' } });
  expect(count).toEqual(expect.arrayContaining(['two', 'out_of', 'ten', 'hundred']));
  for (const word of ['half', 'quarters', 'sixteenth', 'thirtysecond', 'point', 'inches', 'pounds']) {
    expect(count).not.toContain(word);
  }
});

test('looks twice at every confirmation of the lockout, amongst all that the graph knows, and at nothing else', () => {
  const risky = allPhrases().filter(({ meaning }) => riskOf(meaning) === 'confirm');
  expect([...SECOND_LOOK.at].sort()).toEqual(
    [...new Set(risky.map(({ words }) => graphToken(words)))].sort(),
  );
  expect(SECOND_LOOK.at.size).toBeGreaterThan(20);
  expect(SECOND_LOOK.amongst.filter((word) => !GRAPH.has(word))).toEqual([]);
  expect(SECOND_LOOK.amongst).toEqual(expect.arrayContaining([...SECOND_LOOK.at, UNKNOWN_WORD]));
});
