import { describe, expect, test } from 'vitest';
import { FAMILY_PRIORS } from '../../flows/diagnosis/evidence.ts';
import { entropyBits, informationGainBits } from '../../flows/diagnosis/information.ts';

/**
 * J. R. Quinlan, "Induction of decision trees", Machine Learning 1 (1986), table 1: fourteen Saturday mornings,
 * nine of class P and five of class N. The paper gives gain(outlook) = 0.246, gain(temperature) = 0.029,
 * gain(humidity) = 0.151 and gain(windy) = 0.048 bits; later printings round the first and third up.
 */
const SATURDAYS = [
  ['sunny', 'hot', 'high', 'false', 'N'],
  ['sunny', 'hot', 'high', 'true', 'N'],
  ['overcast', 'hot', 'high', 'false', 'P'],
  ['rain', 'mild', 'high', 'false', 'P'],
  ['rain', 'cool', 'normal', 'false', 'P'],
  ['rain', 'cool', 'normal', 'true', 'N'],
  ['overcast', 'cool', 'normal', 'true', 'P'],
  ['sunny', 'mild', 'high', 'false', 'N'],
  ['sunny', 'cool', 'normal', 'false', 'P'],
  ['rain', 'mild', 'normal', 'false', 'P'],
  ['sunny', 'mild', 'normal', 'true', 'P'],
  ['overcast', 'mild', 'high', 'true', 'P'],
  ['overcast', 'hot', 'normal', 'false', 'P'],
  ['rain', 'mild', 'high', 'true', 'N'],
] as const;
const CLASSES = ['P', 'N'] as const;
const shareOfClass = CLASSES.map(
  (name) => SATURDAYS.filter((row) => row[4] === name).length / SATURDAYS.length,
);

/** P(value | class) for every value of a column, read off the table. */
function likelihoodsOf(column: 0 | 1 | 2 | 3): readonly (readonly number[])[] {
  const values = [...new Set(SATURDAYS.map((row) => row[column]))];
  return values.map((value) =>
    CLASSES.map((name) => {
      const ofClass = SATURDAYS.filter((row) => row[4] === name);
      return ofClass.filter((row) => row[column] === value).length / ofClass.length;
    }),
  );
}

describe('information gain', () => {
  test('starts from the published entropy of the table', () => {
    expect(entropyBits(shareOfClass)).toBeCloseTo(0.94, 3);
  });

  test.each([
    ['outlook', 0, 0.246],
    ['temperature', 1, 0.029],
    ['humidity', 2, 0.151],
    ['windy', 3, 0.048],
  ] as const)('of %s is the published figure', (_, column, published) => {
    // The paper cuts the third decimal off rather than rounding it.
    expect(Math.abs(informationGainBits(shareOfClass, likelihoodsOf(column)) - published)).toBeLessThan(
      0.001,
    );
  });
});

/**
 * C. E. Shannon, "A mathematical theory of communication", Bell System Technical Journal 27 (1948): no scheme
 * of yes-or-no questions finds one of several things in fewer questions on average than their entropy in bits,
 * and D. A. Huffman, "A method for the construction of minimum-redundancy codes", Proceedings of the IRE 40(9)
 * (1952), gives the scheme that comes within one question of it.
 */
describe('the entropy of the families', () => {
  test('bounds the mean number of yes-or-no questions of the best scheme', () => {
    const shares = Object.values(FAMILY_PRIORS);
    const bits = entropyBits(shares);
    const questions = huffmanMeanLength(shares);
    expect(bits).toBeCloseTo(2.968, 3);
    expect(questions).toBeGreaterThanOrEqual(bits);
    expect(questions).toBeLessThan(bits + 1);
  });

  test('is met exactly where every share is a power of a half', () => {
    const shares = [0.5, 0.25, 0.125, 0.0625, 0.0625];
    expect(huffmanMeanLength(shares)).toBe(entropyBits(shares));
  });
});

/** Mean depth of Huffman's tree: each merge puts one more question before everything under it. */
function huffmanMeanLength(shares: readonly number[]): number {
  const open = [...shares];
  let mean = 0;
  while (open.length > 1) {
    open.sort((a, b) => a - b);
    const merged = (open.shift() ?? 0) + (open.shift() ?? 0);
    mean += merged;
    open.push(merged);
  }
  return mean;
}
