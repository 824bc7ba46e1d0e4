import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../../audio/command-model/acoustic-source.ts';
import { grammarVocabulary } from '../../../audio/command-model/grammar-vocabulary.ts';
import { graphVocabulary } from '../../../audio/command-model/vocabulary.ts';
import { graphToken } from '../../../grammar/compile.ts';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { allPhrases, MEANING_IDS, type Phrase, phrasesFor, riskOf } from '../../../grammar/lexicon.ts';
import { phoneDistance } from './phone-distance.ts';

/**
 * No phrase may sound like one that safety hangs on. The least distances are an expert estimate, a little under the
 * nearest pair there was when they were set: whoever adds a nearer phrase finds out here.
 */
const leastBesideConfirmation = 5;
const leastBesideVoid = 4;

/** Ways to say a phrase that are compared: its words' variants differ by little. */
const mostWays = 2;

const { dictionary } = readAcousticSource();
const ways = new Map(
  graphVocabulary(grammarVocabulary(), dictionary).map(({ label, spoken }) => {
    let all: string[][] = [[]];
    for (const variants of spoken) {
      all = all.flatMap((before) => variants.map((phones) => [...before, ...phones])).slice(0, mostWays);
    }
    return [label, all] as const;
  }),
);

interface Pair {
  readonly safety: string;
  readonly other: string;
  readonly distance: number;
}

function nearest(safety: readonly Phrase[], besides: (phrase: Phrase) => readonly Phrase[]): Pair[] {
  const pairs = safety.flatMap((phrase) =>
    besides(phrase)
      .filter(({ meaning }) => meaning !== phrase.meaning)
      .map((other): Pair => {
        const waysOf = ({ words }: Phrase) => ways.get(graphToken(words)) ?? [];
        const distances = waysOf(phrase).flatMap((a) => waysOf(other).map((b) => phoneDistance(a, b)));
        return { safety: phrase.words, other: other.words, distance: Math.min(...distances) };
      }),
  );
  return pairs.sort((a, b) => a.distance - b.distance);
}

function print(title: string, pairs: readonly Pair[]): void {
  const lines = pairs.map(({ safety, other, distance }) => `  ${distance}: "${safety}" and "${other}"`);
  console.info(`${title}, nearest by phones:\n${lines.join('\n')}`);
}

const withRisk = (risk: string) => allPhrases().filter(({ meaning }) => riskOf(meaning) === risk);

describe('a phrase that safety hangs on', () => {
  it('sounds like nothing that is active beside it when it confirms', () => {
    const pairs = nearest(withRisk('confirm'), ({ meaning }) =>
      activeMeanings({ meanings: [meaning] }).flatMap(phrasesFor),
    );
    print('confirmations', pairs.slice(0, 5));
    expect(pairs.length).toBeGreaterThan(1_000);
    expect(pairs.filter(({ distance }) => distance < leastBesideConfirmation)).toEqual([]);
  });

  it('sounds like no other phrase of the grammar when it voids a lockout', () => {
    const everything = MEANING_IDS.flatMap(phrasesFor);
    // One-word calls are near to much; they are heard too readily rather than too rarely.
    const long = withRisk('void').filter(({ words }) => words.includes(' '));
    const pairs = nearest(long, () => everything);
    print('voids', pairs.slice(0, 8));
    expect(pairs.filter(({ distance }) => distance < leastBesideVoid)).toEqual([]);
  });
});

describe('the distance of phones', () => {
  const phones = fc.array(fc.constantFrom('P', 'B', 'IY', 'IH', 'S', 'N', 'L'), { maxLength: 8 });

  it('is nothing for the same, the same both ways, and no longer by a detour', () => {
    fc.assert(
      fc.property(phones, phones, phones, (a, b, c) => {
        expect(phoneDistance(a, a)).toBe(0);
        expect(phoneDistance(a, b)).toBe(phoneDistance(b, a));
        expect(phoneDistance(a, c)).toBeLessThanOrEqual(phoneDistance(a, b) + phoneDistance(b, c));
      }),
    );
  });

  it('is three for the textbook pair, whose letters stand for phones here', () => {
    // "kitten" to "sitting": two replacements and an insertion (R. Wagner, M. Fischer, Journal of the ACM 21(1), 1974).
    expect(phoneDistance([...'kitten'], [...'sitting'])).toBe(3);
  });
});
