/** The word that stands for anything not on the active list. */
export const UNKNOWN = '[unk]';

/** A word of the active list as it was heard. Times are milliseconds since the first sample that was decoded. */
export interface DecodedWord {
  readonly word: string;
  readonly startMs: number;
  readonly endMs: number;
  /** Posterior inside the active list, 0 to 1. A wrong word often gets 1: never a safety signal. */
  readonly confidence: number;
}
