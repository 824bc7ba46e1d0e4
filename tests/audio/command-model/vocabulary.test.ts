import { describe, expect, it } from 'vitest';
import { graphVocabulary } from '../../../audio/command-model/vocabulary.ts';

const dictionary = new Map([
  [
    'the',
    [
      ['DH', 'AH'],
      ['DH', 'IY'],
    ],
  ],
  ['key', [['K', 'IY']]],
  ['eight', [['EY', 'T']]],
  ['eighty', [['EY', 'T', 'IY']]],
]);
const source = (phrases: string[], pronunciations: Record<string, string[]> = {}) => ({
  phrases,
  words: [],
  eager: ['key'],
  digits: ['eight'],
  digitLike: ['eighty'],
  pronunciations,
});

describe('the vocabulary', () => {
  it('makes a phrase one word of the graph, with all ways to say it', () => {
    expect(graphVocabulary(source(['the key']), dictionary)).toEqual([
      {
        label: 'the_key',
        spoken: [
          [
            ['DH', 'AH'],
            ['DH', 'IY'],
          ],
          [['K', 'IY']],
        ],
        isEager: false,
      },
    ]);
  });

  it('prefers our own pronunciation to the dictionary', () => {
    const [word] = graphVocabulary(source(['key'], { key: ['K EY'] }), dictionary);
    expect(word?.spoken).toEqual([[['K', 'EY']]]);
  });

  it('marks what is taken on less evidence', () => {
    const words = graphVocabulary(source(['key', 'the key']), dictionary);
    expect(words.map(({ isEager }) => isEager)).toEqual([true, false]);
  });

  it('tells digits and the numbers that sound like one from all else', () => {
    const words = graphVocabulary(source(['eight', 'eighty', 'key']), dictionary);
    expect(words.map(({ label, number }) => [label, number])).toEqual([
      ['eight', 'digit'],
      ['eighty', 'digitLike'],
      ['key', undefined],
    ]);
  });

  it('names the word without a pronunciation and its phrase', () => {
    expect(() => graphVocabulary(source(['the billhook']), dictionary)).toThrow(
      /"billhook" of "the billhook" has no pronunciation/,
    );
  });

  it('refuses anything but lower-case words with single spaces', () => {
    for (const bad of ['The key', 'the  key', ' the', '', 'the_key']) {
      expect(() => graphVocabulary(source([bad]), dictionary)).toThrow(/lower-case words/);
    }
  });
});
