/** Draws from lists; flows/drill/seeded.ts has the chance that comes out the same for the same seed. */

/** One of a list. @throws when it is empty */
export function drawn<T>(from: readonly T[], random: () => number): T {
  const found = from[Math.floor(random() * from.length)];
  if (found === undefined) throw new Error('There is nothing to draw from.');
  return found;
}

/** The list in another order. Source: R. Durstenfeld, "Algorithm 235", Communications of the ACM 7(7), 1964. */
export function shuffled<T>(list: readonly T[], random: () => number): readonly T[] {
  const out = [...list];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j] as T, out[i] as T];
  }
  return out;
}
