import type { MeaningId } from './lexicon.ts';
import {
  FIGURE_MEANINGS,
  RECALL_MEANINGS,
  SETTING_MEANINGS,
  UNIVERSAL_MEANINGS,
  VOID_MEANINGS,
} from './lexicon.ts';
import type { Dimension } from './measurements.ts';

/** What a state of the dialogue listens for, besides what is understood everywhere. */
export interface Expecting {
  readonly meanings: readonly MeaningId[];
  /** Set where a number is asked for. */
  readonly value?: ExpectedValue;
  /** What the screen adds: pointing at an answer that is shown, stepping through a drawing. */
  readonly onScreen?: readonly MeaningId[];
}

export type ExpectedValue =
  | { readonly kind: 'measurement'; readonly dimension: Dimension }
  | { readonly kind: 'missCount' }
  /** A whole number alone; the question names what is counted. */
  | { readonly kind: 'count' }
  /** A day of the calendar, without its year. */
  | { readonly kind: 'day' };

/** The words to find one's way that are understood in noise too: those that every prompt may be answered by. */
export const FEW_MEANINGS = ['notSure', 'cannotSee', 'skip', 'goBack', 'sayAgain', 'help'] as const;

/**
 * Everything understood in a state: what it asks for, the universal words, the record, the figures, and every phrase that voids
 * a lockout.
 */
export function activeMeanings(expecting: Expecting): readonly MeaningId[] {
  return [
    ...new Set<MeaningId>([
      ...expecting.meanings,
      ...(expecting.onScreen ?? []),
      ...UNIVERSAL_MEANINGS,
      ...RECALL_MEANINGS,
      'count.open',
      'tying.open',
      ...SETTING_MEANINGS,
      ...FIGURE_MEANINGS,
      ...VOID_MEANINGS,
    ]),
  ];
}
