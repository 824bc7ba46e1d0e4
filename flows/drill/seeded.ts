/** Chance that comes out the same for the same seed, so that a drill can be given again. */

/**
 * A draw from 0 up to but not including 1, by name, so that what is found at one place does not depend on what was
 * asked before it.
 * @param seed a whole number
 * @param name what is drawn
 */
export function drawn(seed: number, name: string): number {
  return seededRandom(seed ^ fnv1a(name))();
}

/** The item a draw falls on. @param at from 0 up to but not including 1 @throws Error where there is nothing to draw */
export function itemAt<T>(weighted: readonly (readonly [item: T, weight: number])[], at: number): T {
  let left = at * weighted.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [item, weight] of weighted) {
    left -= weight;
    if (left < 0) return item;
  }
  const last = weighted.at(-1);
  if (!last) throw new Error('There is nothing to draw from.');
  return last[0];
}

/**
 * Uniform draws from 0 up to but not including 1, one after the other; the same seed gives the same ones.
 * @param seed a whole number of 32 bits
 * Source: Mulberry32, T. Ettinger, 2017, in the public domain.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The hash of Fowler, Noll and Vo, FNV-1a of 32 bits (IETF draft "The FNV Non-Cryptographic Hash Algorithm"). */
export function fnv1a(text: string): number {
  return [...text].reduce(
    (hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0,
    0x811c9dc5,
  );
}
