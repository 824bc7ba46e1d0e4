import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageOf } from '../../../audio/field-model/coverage.ts';
import { graphPhrases, graphWords, MEANING_IDS, phrasesFor, taughtForm } from '../../../grammar/lexicon.ts';

const everyWord = [...new Set([...graphPhrases(), ...graphWords()].flatMap((phrase) => phrase.split(' ')))];

describe('what a model of ordinary words can hear', () => {
  it('is everything where it has every word', () => {
    expect(coverageOf(new Set(everyWord))).toEqual({ lackingWords: [], lostPhrases: [], taughtGaps: [] });
  });

  it('is nothing where it has none', () => {
    const { lackingWords, taughtGaps } = coverageOf(new Set());
    expect(lackingWords).toEqual([...everyWord].sort());
    expect(taughtGaps).toEqual(
      MEANING_IDS.filter((id) => phrasesFor(id).length > 0).map((id) => ({ taught: taughtForm(id) })),
    );
  });

  it('loses just the phrases with a word that is lacking, and names only others that can be heard', () => {
    fc.assert(
      fc.property(fc.subarray(everyWord, { minLength: 1, maxLength: 12 }), (lacking) => {
        const { lackingWords, lostPhrases, taughtGaps } = coverageOf(
          new Set(everyWord.filter((word) => !lacking.includes(word))),
        );
        expect(lackingWords).toEqual([...lacking].sort());
        const isLost = (words: string) => words.split(' ').some((word) => lacking.includes(word));
        expect(new Set(lostPhrases.map(({ words }) => words))).toEqual(
          new Set([...graphPhrases(), ...graphWords()].filter(isLost)),
        );
        for (const { instead } of lostPhrases) expect(instead === undefined || !isLost(instead)).toBe(true);
        const taught = MEANING_IDS.map(taughtForm);
        expect(taughtGaps.map((gap) => gap.taught)).toEqual(taught.filter(isLost));
        for (const { instead } of taughtGaps) expect(instead === undefined || !isLost(instead)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it('offers the taught form where only another one is lost', () => {
    const vocabulary = new Set(everyWord.filter((word) => word !== 'billhook'));
    for (const { words, instead } of coverageOf(vocabulary).lostPhrases) {
      const meaning = MEANING_IDS.find((id) => phrasesFor(id).some((phrase) => phrase.words === words));
      if (!meaning || !phrasesFor(meaning).every(({ side, part }) => !side && !part)) continue;
      if (!taughtForm(meaning).includes('billhook')) expect(instead).toBe(taughtForm(meaning));
    }
  });
});
