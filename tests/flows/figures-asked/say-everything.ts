import { spokenTexts } from '../../../src/build/spoken-texts.ts';

const SPOKEN = new Set(spokenTexts());

/** Pieces that have no clip. */
export function unspeakable(say: readonly string[]): readonly string[] {
  return say.filter((piece) => !SPOKEN.has(piece));
}
