import { describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../../audio/command-model/acoustic-source.ts';
import { decoyPronunciations } from '../../../audio/command-model/decoys.ts';
import { grammarVocabulary } from '../../../audio/command-model/grammar-vocabulary.ts';
import type { Pronunciation } from '../../../audio/command-model/sphinx-dictionary.ts';
import { type GraphWord, graphVocabulary } from '../../../audio/command-model/vocabulary.ts';

const dictionary = new Map<string, readonly Pronunciation[]>(
  Object.entries({
    no: 'N OW',
    know: 'N OW',
    go: 'G OW',
    snow: 'S N OW',
    oh: 'OW',
    now: 'N AW',
    cow: 'K AW',
    stop: 'S T AA P',
    top: 'T AA P',
    back: 'B AE K',
    pack: 'P AE K',
  }).map(([word, phones]) => [word, [phones.split(' ')]]),
);

function phrase(label: string, isEager = false): GraphWord {
  return { label, isEager, spoken: label.split(' ').map((word) => dictionary.get(word) ?? []) };
}

/** The words whose pronunciations are decoys. */
function decoysOf(...phrases: readonly GraphWord[]): readonly string[] {
  const decoys = decoyPronunciations(phrases, dictionary).map((way) => way.join(' '));
  return [...dictionary.keys()].filter((word) => decoys.includes(dictionary.get(word)?.[0]?.join(' ') ?? ''));
}

describe('the decoys beside short phrases', () => {
  it('differ from one by one sound: another, one more, one less', () => {
    expect(decoysOf(phrase('no'))).toEqual(['go', 'snow', 'oh', 'now']);
  });

  it('are never what is a phrase itself, or sounds the same', () => {
    expect(decoysOf(phrase('no'), phrase('go'))).not.toContain('go');
    expect(decoysOf(phrase('no'))).not.toContain('know');
  });

  it('are the words of a phrase too, without the others', () => {
    expect(decoysOf(phrase('go back'))).toEqual(expect.arrayContaining(['go', 'back', 'pack']));
  });

  it('leave alone what must rather be heard wrongly than missed, and whatever sounds near it', () => {
    expect(decoysOf(phrase('stop', true))).toEqual([]);
    expect(decoysOf(phrase('top'), phrase('stop', true))).toEqual([]);
  });
});

it('no decoy of the bundled model can be said for a single word of the grammar', () => {
  const { dictionary: words } = readAcousticSource();
  const vocabulary = graphVocabulary(grammarVocabulary(), words);
  const decoys = new Set(decoyPronunciations(vocabulary, words).map((way) => way.join(' ')));
  const single = vocabulary.filter(({ spoken }) => spoken.length === 1);
  const taken = single.filter(({ spoken }) => spoken[0]?.some((way) => decoys.has(way.join(' '))));
  expect(decoys.size).toBeGreaterThan(500);
  expect(taken.map(({ label }) => label)).toEqual([]);
});
