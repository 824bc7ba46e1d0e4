import { describe, expect, test } from 'vitest';
import { activeMeanings } from '../../grammar/expecting.ts';
import {
  allPhrases,
  graphPhrases,
  isMeaningId,
  MEANING_IDS,
  type MeaningId,
  phrasesFor,
  riskOf,
  ruleOf,
  SYMPTOM_MEANINGS,
  taughtForm,
  UNIVERSAL_MEANINGS,
  VOID_MEANINGS,
} from '../../grammar/lexicon.ts';
import { NUMBER_WORDS, UNIT_WORDS } from '../../grammar/value-words.ts';
import { INQUIRY_STATES } from './states.ts';

const SPOKEN = MEANING_IDS.filter((meaning) => !meaning.startsWith('value.'));
const FINDINGS = MEANING_IDS.filter((meaning) => meaning.startsWith('finding.'));

/** Groups of vowels, with a silent final e taken off: near enough to tell two syllables from four. */
function syllables(words: string): number {
  return words
    .split(' ')
    .map((word) => Math.max(1, word.replace(/e(d|s)?$/, '').match(/[aeiouy]+/g)?.length ?? 0))
    .reduce((sum, count) => sum + count, 0);
}

describe('every phrase', () => {
  test('is lower-case words with single spaces, all notation expanded', () => {
    for (const { words } of allPhrases()) expect(words).toMatch(/^[a-z']+( [a-z']+)*$/);
  });

  test('is no longer than a breath', () => {
    for (const { words } of allPhrases()) expect(words.split(' ').length, words).toBeLessThanOrEqual(9);
  });

  test('is one word of the recogniser, said once in the list', () => {
    expect(new Set(graphPhrases()).size).toBe(graphPhrases().length);
    for (const { words } of allPhrases()) expect(graphPhrases()).toContain(words);
  });
});

describe('every meaning', () => {
  test.each(SPOKEN)('%s has a form to teach', (meaning) => {
    expect(isMeaningId(meaning)).toBe(true);
    expect(taughtForm(meaning)).toBe(phrasesFor(meaning)[0]?.words);
    expect(taughtForm(meaning)).not.toBe('');
  });

  test.each([...SYMPTOM_MEANINGS, ...FINDINGS, ...VOID_MEANINGS])(
    '%s teaches a form long enough to be heard',
    (meaning) => {
      expect(syllables(taughtForm(meaning)), taughtForm(meaning)).toBeGreaterThanOrEqual(4);
    },
  );

  test('that clears a lockout step teaches four syllables at least and has no short form', () => {
    for (const meaning of MEANING_IDS.filter((id) => riskOf(id) === 'confirm')) {
      for (const { words } of phrasesFor(meaning)) expect(syllables(words), words).toBeGreaterThanOrEqual(4);
    }
  });

  test.each(SYMPTOM_MEANINGS)('%s has five natural ways of saying it', (meaning) => {
    expect(ruleOf(meaning).forms.length).toBeGreaterThanOrEqual(5);
  });

  test('an answer or a confirmation has something to read back', () => {
    for (const meaning of SPOKEN.filter((id) => riskOf(id) !== 'navigation')) {
      expect(ruleOf(meaning).readBack, meaning).toMatch(/^[A-Z][A-Za-z ,'-]*\.$/);
    }
  });

  test('void meanings, and stop, are the only ones that void', () => {
    const voiding = MEANING_IDS.filter((id) => riskOf(id) === 'void');
    expect(voiding.toSorted()).toEqual([...VOID_MEANINGS, 'stop'].toSorted());
  });
});

describe('a side is given away by "the left one" and "the right one" only', () => {
  test.each(allPhrases().filter(({ side }) => side))('$words', ({ words, side }) => {
    expect(words).toContain(`the ${side} one`);
  });

  test('and every subject form has all three subjects', () => {
    const templated = SPOKEN.flatMap((meaning) => ruleOf(meaning).forms).filter((form) =>
      form.includes('{subject}'),
    );
    expect(templated.length).toBeGreaterThan(0);
    expect(allPhrases().filter(({ side }) => side === 'left')).toHaveLength(templated.length);
    expect(allPhrases().filter(({ side }) => side === 'right')).toHaveLength(templated.length);
  });
});

describe('within one state', () => {
  test.each(INQUIRY_STATES)('%s: no phrase means two things', (_, expecting) => {
    const meaningOf = new Map<string, MeaningId>();
    for (const meaning of activeMeanings(expecting)) {
      for (const { words } of phrasesFor(meaning)) {
        expect(meaningOf.get(words) ?? meaning, words).toBe(meaning);
        meaningOf.set(words, meaning);
      }
    }
  });

  test.each(INQUIRY_STATES)(
    '%s: no answer is the beginning of something else, or begins with it',
    (_, expecting) => {
      const answers = expecting.meanings.flatMap(phrasesFor);
      const phrases = activeMeanings(expecting).flatMap(phrasesFor);
      for (const answer of answers) {
        for (const other of phrases.filter(({ meaning }) => meaning !== answer.meaning)) {
          const [short, long] = [answer.words, other.words].toSorted((a, b) => a.length - b.length);
          expect(long?.startsWith(`${short} `), `${short} / ${long}`).toBe(false);
        }
      }
    },
  );

  test.each(INQUIRY_STATES)('%s: the answers differ by more than a "no" or a "not"', (_, { meanings }) => {
    const plain = meanings.flatMap(phrasesFor).map(({ words, meaning }) => ({
      meaning,
      bare: words
        .split(' ')
        .filter((word) => !['no', 'not', 'never', "isn't", "doesn't", "don't", "won't"].includes(word))
        .join(' '),
    }));
    for (const { bare, meaning } of plain) {
      expect(
        plain.filter((other) => other.bare === bare).every((other) => other.meaning === meaning),
        bare,
      ).toBe(true);
    }
  });

  test.each(INQUIRY_STATES.filter(([, { value }]) => value))(
    '%s: no phrase is all number words',
    (_, expecting) => {
      const ofNumbers: readonly string[] = [...NUMBER_WORDS, ...UNIT_WORDS];
      for (const { words } of activeMeanings(expecting).flatMap(phrasesFor)) {
        expect(
          words.split(' ').every((word) => ofNumbers.includes(word)),
          words,
        ).toBe(false);
      }
    },
  );
});

test('what is understood everywhere holds "stop" and everything that voids a lockout', () => {
  const everywhere = activeMeanings({ meanings: [] });
  expect(everywhere).toContain('stop');
  for (const meaning of [...UNIVERSAL_MEANINGS, ...VOID_MEANINGS]) expect(everywhere).toContain(meaning);
});
