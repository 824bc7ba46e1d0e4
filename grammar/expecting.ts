import type { MeaningId } from './lexicon.ts';
import {
  FIGURE_MEANINGS,
  HEARING_MEANINGS,
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
  /** How much is understood beside what is asked; everything where it is missing. */
  readonly reach?: Reach;
  /** Whether no lockout was begun that anything could take away, and nobody was let near the machine. */
  readonly nothingToVoid?: boolean;
}

/**
 * What is understood beside what is asked and shown.
 * - `everything`: every universal word, the record, the figures, the settings.
 * - `asked`: a few words to find one's way, for noise in which a short list is heard better than a long one.
 * - `voids`: nothing, not even what is asked, but whatever takes a lockout away.
 */
export type Reach = 'everything' | 'asked' | 'voids';

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
 * a lockout. The reach takes from all of it but the last.
 */
export function activeMeanings(expecting: Expecting): readonly MeaningId[] {
  const asked = [...expecting.meanings, ...(expecting.onScreen ?? [])];
  const voids: readonly MeaningId[] = ['stop', ...VOID_MEANINGS];
  return [...new Set<MeaningId>([...beside(expecting.reach ?? 'everything', asked), ...voids])];
}

function beside(reach: Reach, asked: readonly MeaningId[]): readonly MeaningId[] {
  switch (reach) {
    case 'everything':
      return [
        ...asked,
        ...UNIVERSAL_MEANINGS,
        ...RECALL_MEANINGS,
        'count.open',
        'tying.open',
        ...SETTING_MEANINGS,
        ...HEARING_MEANINGS,
        ...FIGURE_MEANINGS,
      ];
    case 'asked':
      return [...asked, ...FEW_MEANINGS];
    case 'voids':
      return [];
  }
}
