import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Side } from '../../grammar/sides.ts';
import type { Slots } from '../../grammar/understand.ts';

export type Crop = 'thin' | 'usual' | 'dense';
/** How hard the density rails squeeze. */
export type BaleDensity = 'looser' | 'usual' | 'tighter';
export type ShaftSpeed = 'slow' | 'full';

/** One thing said while bales are counted. The list only grows; a slip is taken back by a later entry. */
export type CountEntry =
  | { readonly kind: 'good'; readonly bales: number }
  | { readonly kind: 'miss'; readonly side: Side | 'both' }
  | { readonly kind: 'newBall'; readonly side: Side }
  | { readonly kind: 'crop'; readonly crop: Crop }
  | { readonly kind: 'density'; readonly density: BaleDensity }
  | { readonly kind: 'speed'; readonly speed: ShaftSpeed }
  /** Takes back the latest entry that still stands. */
  | { readonly kind: 'takeBack' };

/** Good bales given as one number at most; more in one breath is a slip of the tongue. */
export const MOST_AT_ONCE = 500;

/** The entry that something said stands for; undefined where it stands for none. */
export function entryFor(meaning: MeaningId, { count }: Slots): CountEntry | undefined {
  switch (meaning) {
    case 'value.count':
      return count !== undefined && Number.isInteger(count) && count >= 1 && count <= MOST_AT_ONCE
        ? { kind: 'good', bales: count }
        : undefined;
    case 'count.good':
      return { kind: 'good', bales: 1 };
    case 'count.missLeft':
      return { kind: 'miss', side: 'left' };
    case 'count.missRight':
      return { kind: 'miss', side: 'right' };
    case 'count.missBoth':
      return { kind: 'miss', side: 'both' };
    case 'count.newBallLeft':
      return { kind: 'newBall', side: 'left' };
    case 'count.newBallRight':
      return { kind: 'newBall', side: 'right' };
    case 'count.cropThin':
      return { kind: 'crop', crop: 'thin' };
    case 'count.cropUsual':
      return { kind: 'crop', crop: 'usual' };
    case 'count.cropDense':
      return { kind: 'crop', crop: 'dense' };
    case 'count.densityLooser':
      return { kind: 'density', density: 'looser' };
    case 'count.densityUsual':
      return { kind: 'density', density: 'usual' };
    case 'count.densityTighter':
      return { kind: 'density', density: 'tighter' };
    case 'count.speedSlow':
      return { kind: 'speed', speed: 'slow' };
    case 'count.speedFull':
      return { kind: 'speed', speed: 'full' };
    case 'count.takeBack':
      return { kind: 'takeBack' };
    default:
      return undefined;
  }
}

/** The entries that still stand, in order. */
export function standing(entries: readonly CountEntry[]): readonly CountEntry[] {
  return standingOf(entries, (entry) => entry);
}

/** An entry with the number of repairs that had been done in the job when it was counted. */
export interface DatedEntry {
  readonly entry: CountEntry;
  readonly repairs: number;
}

/** What was counted while just so many repairs had been done. What is taken back may have been counted before them. */
export function countedAfter(repairs: number, entries: readonly DatedEntry[]): readonly CountEntry[] {
  return standingOf(entries, ({ entry }) => entry)
    .filter((dated) => dated.repairs === repairs)
    .map(({ entry }) => entry);
}

function standingOf<T>(all: readonly T[], entryOf: (each: T) => CountEntry): readonly T[] {
  const kept: T[] = [];
  for (const each of all) {
    if (entryOf(each).kind === 'takeBack') kept.pop();
    else kept.push(each);
  }
  return kept;
}
