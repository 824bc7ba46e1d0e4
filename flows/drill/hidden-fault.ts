import type { MissCount } from '../../grammar/measurements.ts';
import type { Side } from '../../grammar/sides.ts';
import { type Hypothesis, PRIOR_BELIEFS } from '../diagnosis/beliefs.ts';
import { familyById } from '../families/all.ts';
import { SOMETHING_ELSE } from '../families/family.ts';
import { drawn, itemAt } from './seeded.ts';

/**
 * How hard a drill is.
 * - 1: a fault whose repair needs no hands in the machine; what is found is told in words.
 * - 2: any fault of the tables; strings are shown as pictures and measurements as numbers, to be judged.
 */
export type DrillLevel = 1 | 2;

/** The same set-up is the same drill. */
export interface DrillSetup {
  /** A whole number from 0 to 9999. */
  readonly seed: number;
  readonly level: DrillLevel;
}

export const LARGEST_SEED = 9_999;

/** What is wrong with the machine of a drill. */
export interface HiddenFault extends Hypothesis {
  readonly side: Side;
  /** How often it missed before the repair. */
  readonly missed: MissCount;
}

/** So many of ten, so that the proof of a drill takes a few ties and not an afternoon. Expert estimate. */
const MISSED_OF_TEN = [6, 7, 8, 9] as const;

/** Draws the fault of a drill by the base rates of the tables, among those its level admits. */
export function hiddenFault({ seed, level }: DrillSetup): HiddenFault {
  const { family, cause } = itemAt(
    candidates(level).map((belief) => [belief, belief.probability] as const),
    drawn(seed, `fault ${level}`),
  );
  const misses = itemAt(
    MISSED_OF_TEN.map((count) => [count, 1] as const),
    drawn(seed, 'misses'),
  );
  return {
    family,
    cause,
    side: drawn(seed, 'side') < 0.5 ? 'left' : 'right',
    missed: { misses, bales: 10 },
  };
}

/** Every fault a level may hide. */
export function candidates(level: DrillLevel) {
  const listed = PRIOR_BELIEFS.filter(({ cause }) => cause !== SOMETHING_ELSE);
  if (level === 2) return listed;
  return listed.filter(({ family, cause }) => {
    const remedy = familyById(family).causes[cause]?.remedy;
    return remedy?.reach === 'safeStop' && remedy.refer === undefined;
  });
}
