import type { MissCount } from '../../grammar/measurements.ts';
import type { Side } from '../../grammar/sides.ts';
import { type Beliefs, type Hypothesis, PRIOR_BELIEFS } from '../diagnosis/beliefs.ts';
import { familyById } from '../families/all.ts';
import { type Remedy, SOMETHING_ELSE } from '../families/family.ts';
import { type DrillLevel, LEVELS } from './levels.ts';
import { drawn, itemAt } from './seeded.ts';

/** The same set-up is the same drill. */
export interface DrillSetup {
  /** A whole number from 0 to {@link LARGEST_SEED}. */
  readonly seed: number;
  readonly level: DrillLevel;
}

export const LARGEST_SEED = 9_999;

/** What is wrong with the machine of a drill. */
export interface HiddenFault {
  /** The one the drill is about, then perhaps a small one of the same family. */
  readonly faults: readonly [Hypothesis, ...Hypothesis[]];
  readonly side: Side;
  /** How often it missed before the repair. */
  readonly missed: MissCount;
}

/** A second fault is put right in no more than this, with no new part. Expert estimate. */
const SMALL_MINUTES = 10;

/** Draws the fault of a drill by the base rates of the tables, among those its level admits. */
export function hiddenFault({ seed, level }: DrillSetup): HiddenFault {
  const { missedOfTen } = LEVELS[level];
  const first = likelierMoreOften(candidates(level), drawn(seed, `fault ${level}`));
  const misses = itemAt(
    missedOfTen.map((count) => [count, 1] as const),
    drawn(seed, 'misses'),
  );
  return {
    faults: [first, ...secondFault({ seed, level }, first)],
    side: drawn(seed, 'side') < 0.5 ? 'left' : 'right',
    missed: { misses, bales: 10 },
  };
}

/** Every fault a level may hide. */
export function candidates(level: DrillLevel): Beliefs {
  const listed = PRIOR_BELIEFS.filter(({ cause }) => cause !== SOMETHING_ELSE);
  if (LEVELS[level].needsHands) return listed;
  return listed.filter((fault) => {
    const { reach, refer } = remedyOf(fault);
    return reach === 'safeStop' && refer === undefined;
  });
}

/** Whether a cause is one of those hidden. */
export function isHidden({ faults }: HiddenFault, cause: Hypothesis): boolean {
  return isAmong(faults, cause);
}

/** Whether everything that was hidden has been repaired. */
export function isPutRight({ faults }: HiddenFault, repairs: readonly Hypothesis[]): boolean {
  return faults.every((fault) => isAmong(repairs, fault));
}

export function isAmong(causes: readonly Hypothesis[], { family, cause }: Hypothesis): boolean {
  return causes.some((each) => each.family === family && each.cause === cause);
}

/** A second fault of the same family, where the level draws one; none beside what only the dealer mends. */
function secondFault({ seed, level }: DrillSetup, first: Hypothesis): readonly Hypothesis[] {
  if (drawn(seed, 'two faults') >= LEVELS[level].twoFaults || remedyOf(first).refer !== undefined) return [];
  const others = candidates(level).filter(
    (fault) => fault.family === first.family && fault.cause !== first.cause && isSmall(remedyOf(fault)),
  );
  return others.length > 0 ? [likelierMoreOften(others, drawn(seed, 'second fault'))] : [];
}

function isSmall({ refer, parts, minutes }: Remedy): boolean {
  return refer === undefined && parts === undefined && minutes <= SMALL_MINUTES;
}

function likelierMoreOften(beliefs: Beliefs, at: number): Hypothesis {
  const { family, cause } = itemAt(
    beliefs.map((belief) => [belief, belief.probability] as const),
    at,
  );
  return { family, cause };
}

function remedyOf({ family, cause }: Hypothesis): Remedy {
  const remedy = familyById(family).causes[cause]?.remedy;
  if (!remedy) throw new Error(`The family ${family} has no cause ${cause}.`);
  return remedy;
}
