/**
 * Bayes' rule over a list of explanations.
 * @param probabilities P(explanation); need not sum to one
 * @param likelihoods P(what was answered | explanation), in the same order
 * @returns P(explanation | what was answered), summing to one
 */
export function updated(probabilities: readonly number[], likelihoods: readonly number[]): readonly number[] {
  return normalised(probabilities.map((probability, index) => probability * (likelihoods[index] ?? 1)));
}

/** The same proportions, summing to one. */
export function normalised(weights: readonly number[]): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
