/**
 * How fragments are set side by side. Clips carry some 40 milliseconds of their own quiet at the joint; what is
 * added here is by ear, common practice, no source.
 */

/** Between two sentences, seconds: the turn gap of ordinary talk (Levinson and Torreira, Front. Psychol. 6:731, 2015). */
const SENTENCE_GAP_S = 0.2;
/** After a comma or colon, seconds. */
const CLAUSE_GAP_S = 0.1;
/** Between the pieces of one value, seconds: none, or "two hundred" "five" falls into two numbers. */
const PIECE_GAP_S = 0;

/** True for a fragment that is a whole sentence or the end of one. */
export function endsSentence(fragment: string): boolean {
  return /[.?!]$/.test(fragment);
}

/** Silence to leave after a fragment that another one follows, seconds. */
export function gapAfterS(fragment: string): number {
  if (endsSentence(fragment)) return SENTENCE_GAP_S;
  return /[,:;]$/.test(fragment) ? CLAUSE_GAP_S : PIECE_GAP_S;
}
