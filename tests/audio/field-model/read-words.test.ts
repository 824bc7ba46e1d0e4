import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DecodedWord } from '../../../audio/ears/heard-words.ts';
import { phraseWithin } from '../../../audio/field-model/read-words.ts';
import { DENIALS, joinedToPhrase, wordEntries } from '../../../audio/field-model/word-list.ts';
import { recogniserList } from '../../../grammar/compile.ts';
import { graphPhrases, graphWords, MEANING_IDS, phrasesFor, riskOf } from '../../../grammar/lexicon.ts';
import { understand } from '../../../grammar/understand.ts';

const everything = { meanings: MEANING_IDS };
const list = recogniserList(everything);
const everyWord = [...new Set([...graphPhrases(), ...graphWords()].flatMap((phrase) => phrase.split(' ')))];

/** Words said one after the other, each `eachMs` long. */
function said(
  words: readonly string[],
  eachMs = 300,
): { heard: DecodedWord[]; startMs: number; endMs: number } {
  const heard = words.map((word, i) => ({
    word,
    startMs: 450 + i * eachMs,
    endMs: 450 + (i + 1) * eachMs,
    confidence: 1 - i / 100,
  }));
  return { heard, startMs: 450, endMs: 450 + words.length * eachMs };
}

function textOf(words: readonly DecodedWord[]): string {
  return words.map(({ word }) => word).join(' ');
}

/** What the app would make of words that were heard. */
function understood(words: readonly string[], eachMs?: number) {
  const { heard, ...speech } = said(words, eachMs);
  return understand(textOf(phraseWithin(heard, list, speech)), everything);
}

describe('a list for a model of ordinary words', () => {
  it('has the phrases in their own words, and denials beside them', () => {
    expect(wordEntries(['both_knotters', 'stop', '[unk]'], () => true)).toEqual([
      'both knotters',
      'stop',
      ...DENIALS,
    ]);
  });

  it('leaves out phrases with a word that the model lacks, and nothing else', () => {
    const knows = (word: string) => word !== 'knotters' && !DENIALS.some((denial) => denial === word);
    expect(wordEntries(['both_knotters', 'stop', '[unk]'], knows)).toEqual(['stop']);
  });
});

describe('heard words', () => {
  it('become the phrase where they are one, from its first word to its last, as sure as the least sure', () => {
    const { heard } = said(['both', 'knotters']);
    expect(joinedToPhrase(heard, ['both_knotters', '[unk]'])).toEqual([
      { word: 'both_knotters', startMs: 450, endMs: 1050, confidence: 0.99 },
    ]);
  });

  it('mean the same as the phrase heard as one, for every phrase there is', () => {
    for (const phrase of MEANING_IDS.flatMap(phrasesFor)) {
      expect(understood(phrase.words.split(' '))).toEqual(
        understand(phrase.words.replaceAll(' ', '_'), everything),
      );
    }
  });

  it('stay words where they are no phrase, so that a number can be put together', () => {
    const { heard } = said(['three', 'hundred', 'five']);
    expect(joinedToPhrase(heard, list)).toEqual(heard);
  });

  it('lose other talk before and after the speech, and none within', () => {
    const span = { startMs: 450, endMs: 1050 };
    const talk = (startMs: number, endMs: number) => ({ word: '[unk]', startMs, endMs, confidence: 1 });
    const { heard } = said(['both', 'knotters']);
    expect(textOf(phraseWithin([talk(0, 400), ...heard, talk(1100, 1400)], list, span))).toBe(
      'both_knotters',
    );
    expect(textOf(phraseWithin([...heard, talk(900, 1040)], list, span))).toBe('both knotters [unk]');
    const [first, second] = heard as [DecodedWord, DecodedWord];
    const late = { ...second, startMs: 1400, endMs: 1700 };
    expect(textOf(phraseWithin([first, talk(1100, 1400), late], list, span))).toBe('both [unk] knotters');
  });

  it('are none of this utterance where the whole phrase lies outside the speech', () => {
    const { heard } = said(['both', 'knotters']);
    expect(phraseWithin(heard, list, { startMs: 1100, endMs: 2000 })).toEqual([]);
  });
});

describe('a step of the lockout', () => {
  const confirming = MEANING_IDS.filter((meaning) => riskOf(meaning) === 'confirm').flatMap(phrasesFor);

  it('is confirmed by its own phrase alone: never with a word more, a word less or another word', () => {
    const change = fc.record({
      phrase: fc.constantFrom(...confirming),
      at: fc.nat(12),
      word: fc.constantFrom(...everyWord, ...DENIALS, '[unk]'),
      how: fc.constantFrom('more', 'less', 'other'),
      eachMs: fc.constantFrom(80, 150, 300),
    });
    fc.assert(
      fc.property(change, ({ phrase, at, word, how, eachMs }) => {
        const words = phrase.words.split(' ');
        words.splice(at % (words.length + 1), how === 'more' ? 0 : 1, ...(how === 'less' ? [] : [word]));
        const understanding = understood(words, eachMs);
        if (understanding.outcome !== 'understood' || riskOf(understanding.meaning) !== 'confirm') return;
        expect(phrasesFor(understanding.meaning).map((own) => own.words)).toContain(words.join(' '));
      }),
      { numRuns: 1_500 },
    );
  });

  it('is not confirmed where it is denied', () => {
    for (const { words } of confirming) {
      for (const denial of DENIALS) {
        const parts = words.split(' ');
        for (let at = 0; at <= parts.length; at++) {
          const understanding = understood([...parts.slice(0, at), denial, ...parts.slice(at)]);
          if (understanding.outcome === 'understood')
            expect(riskOf(understanding.meaning)).not.toBe('confirm');
        }
      }
    }
  });
});
