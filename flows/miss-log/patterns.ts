import type { Side } from '../../grammar/sides.ts';
import { chanceNotTheBallChange } from '../figures/ball-change-test.ts';
import { chanceRepairChangedNothing } from '../figures/before-after.ts';
import { sideTest } from '../figures/side-test.ts';
import { SPLICE_WINDOW_BALES } from '../figures/splice-window.ts';
import { type CountedBale, isMissed, type Tally } from './tally.ts';

/** What the misses lean to, with the chance of leaning so far by luck alone. */
export type Pattern =
  | { readonly kind: 'oneSide'; readonly side: Side; readonly chance: number }
  | {
      readonly kind: 'afterBallChange';
      readonly inWindow: number;
      readonly of: number;
      readonly chance: number;
    }
  | { readonly kind: 'denseCrop'; readonly chance: number }
  | { readonly kind: 'tightBales'; readonly chance: number }
  | { readonly kind: 'fullSpeed'; readonly chance: number }
  | { readonly kind: 'gettingWorse'; readonly chance: number };

/**
 * Six patterns are looked for, and with each look luck gets another try: so each has to be six times as unlikely
 * as the customary one in twenty (Bonferroni's inequality).
 */
export const PATTERN_CHANCE = 0.05 / 6;

/** The patterns that luck hardly explains, the surest first. Every test is exact. */
export function patternsIn(tally: Tally): readonly Pattern[] {
  return [
    ...oneSide(tally),
    ...afterBallChange(tally),
    ...denseCrop(tally),
    ...tightBales(tally),
    ...fullSpeed(tally),
    ...gettingWorse(tally),
  ]
    .filter(({ chance }) => chance < PATTERN_CHANCE)
    .sort((a, b) => a.chance - b.chance);
}

/** A sign test on the misses of either side; nobody had named the side before, so both tails count. */
function oneSide({ misses }: Tally): Pattern[] {
  const { heavierSide, chanceOnEitherSide } = sideTest(misses.left, misses.right);
  return heavierSide === 'even' ? [] : [{ kind: 'oneSide', side: heavierSide, chance: chanceOnEitherSide }];
}

/** Misses within a few bales after a ball change, of those where the age of the ball is known. */
function afterBallChange({ bales }: Tally): Pattern[] {
  const strings = bales.flatMap(({ ballAge, missed }) =>
    (['left', 'right'] as const).flatMap((side) => {
      const age = ballAge[side];
      return age === undefined ? [] : [{ isNew: age <= SPLICE_WINDOW_BALES, isMissed: missed[side] }];
    }),
  );
  const isNew = strings.filter((string) => string.isNew);
  // With every string new, or none, there is nothing to set against the others.
  if (isNew.length === 0 || isNew.length === strings.length) return [];
  const of = strings.filter((string) => string.isMissed).length;
  const inWindow = isNew.filter((string) => string.isMissed).length;
  const chance = chanceNotTheBallChange(inWindow, of, strings.length, isNew.length);
  return inWindow === 0 ? [] : [{ kind: 'afterBallChange', inWindow, of, chance }];
}

function denseCrop({ bales }: Tally): Pattern[] {
  const told = bales.filter(({ crop }) => crop !== undefined);
  const chance = chanceOfMoreIn(told, ({ crop }) => crop === 'dense');
  return chance === undefined ? [] : [{ kind: 'denseCrop', chance }];
}

function tightBales({ bales }: Tally): Pattern[] {
  const told = bales.filter(({ density }) => density !== undefined);
  const chance = chanceOfMoreIn(told, ({ density }) => density === 'tighter');
  return chance === undefined ? [] : [{ kind: 'tightBales', chance }];
}

function fullSpeed({ bales }: Tally): Pattern[] {
  const told = bales.filter(({ speed }) => speed !== undefined);
  const chance = chanceOfMoreIn(told, ({ speed }) => speed === 'full');
  return chance === undefined ? [] : [{ kind: 'fullSpeed', chance }];
}

/** The later half against the earlier. */
function gettingWorse({ bales }: Tally): Pattern[] {
  const middle = Math.ceil(bales.length / 2);
  const later = new Set(bales.slice(middle));
  const chance = chanceOfMoreIn(bales, (bale) => later.has(bale));
  return chance === undefined ? [] : [{ kind: 'gettingWorse', chance }];
}

/**
 * Chance that so many of the missed bales are among the picked ones, or more, if missing has nothing to do with it:
 * Fisher's exact test. Undefined where there is nothing to compare.
 */
function chanceOfMoreIn(
  bales: readonly CountedBale[],
  isPicked: (bale: CountedBale) => boolean,
): number | undefined {
  const picked = bales.filter(isPicked);
  const others = bales.filter((bale) => !isPicked(bale));
  if (picked.length === 0 || others.length === 0 || !picked.some(isMissed)) return undefined;
  return chanceRepairChangedNothing(
    { misses: picked.filter(isMissed).length, ties: picked.length },
    { misses: others.filter(isMissed).length, ties: others.length },
  );
}
