/**
 * The mean of a Dirichlet distribution after counting: the seed shares count as `strength` cases already seen
 * (Laplace's rule of succession is the case of equal shares and one case each).
 * @param seed shares summing to one
 * @param strength how many cases the seed is worth, above zero
 * @param counts cases seen, in the order of `seed`; none negative
 * @returns shares summing to one
 */
export function sharesAfter(
  seed: readonly number[],
  strength: number,
  counts: readonly number[],
): readonly number[] {
  const total = counts.reduce((sum, count) => sum + count, strength);
  return seed.map((share, index) => (strength * share + (counts[index] ?? 0)) / total);
}
