/**
 * Chance that comes out the same for the same seed, so that a drill can be given again. Every draw has a name, so that
 * what is found at one place does not depend on what was asked before it.
 */

/** A draw from 0 up to but not including 1. @param seed a whole number @param name what is drawn */
export function drawn(seed: number, name: string): number {
  return mulberry32(seed ^ fnv1a(name));
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

/** One step of the mulberry32 generator, in the public domain. */
function mulberry32(seed: number): number {
  const state = (seed + 0x6d2b79f5) | 0;
  let t = state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
}

/** The hash of Fowler, Noll and Vo, FNV-1a of 32 bits (IETF draft "The FNV Non-Cryptographic Hash Algorithm"). */
export function fnv1a(text: string): number {
  return [...text].reduce(
    (hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0,
    0x811c9dc5,
  );
}
