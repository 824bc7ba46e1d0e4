import { normalised } from './bayes.ts';

/** Uncertainty of a distribution in bits (Shannon 1948). Zero-probability entries add nothing. */
export function entropyBits(probabilities: readonly number[]): number {
  return probabilities.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

/**
 * What a question is expected to tell: its mutual information with the explanations, in bits (Shannon 1948).
 * @param probabilities P(explanation), summing to one
 * @param answers for each answer, P(answer | explanation) in the order of `probabilities`
 */
export function informationGainBits(
  probabilities: readonly number[],
  answers: readonly (readonly number[])[],
): number {
  const remaining = answers.reduce((sum, likelihoods) => {
    const joint = probabilities.map((probability, index) => probability * (likelihoods[index] ?? 0));
    const total = joint.reduce((a, b) => a + b, 0);
    return total > 0 ? sum + total * entropyBits(normalised(joint)) : sum;
  }, 0);
  return entropyBits(probabilities) - remaining;
}
