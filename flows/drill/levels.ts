import { SYMPTOM_NAMED_RIGHTLY } from '../diagnosis/evidence.ts';

/** How hard a drill is; what each level holds is {@link LEVELS}. */
export type DrillLevel = 1 | 2 | 3 | 4;

/** What a level asks of a trainee. The shares and counts are expert estimates. */
export interface Level {
  /** Completes "Level two: ...". */
  readonly title: string;
  /** Whether the repair of its faults may need hands in the machine. */
  readonly needsHands: boolean;
  /** Whether what is found is told in words, or shown and measured, to be judged. */
  readonly shows: 'words' | 'picturesAndNumbers';
  /** How often they tell the fault's own symptom first. */
  readonly namedRightly: number;
  /** Share of the drills that hide a second, small fault beside the first. */
  readonly twoFaults: number;
  /** Evidence questions whose answer is not the one the fault usually gives. */
  readonly misleading: 0 | 1;
  /** Whether a number lies in the middle of its band, or within two marks of its limit. */
  readonly readings: 'clear' | 'nearLimit';
  /** It missed so many of ten: the more, the fewer ties prove the repair. */
  readonly missedOfTen: readonly number[];
  /** How many steps are made untrue, and how often somebody presses for a short cut. */
  readonly traps: number;
  readonly pressures: number;
  /** What the trainer sees to around the tablet; empty where nothing is needed. */
  readonly surroundings: string;
}

const OFTEN = [6, 7, 8, 9];
/** A fault that comes and goes, which a few good ties do not rule out. */
const NOW_AND_THEN = [3, 4, 5];

export const LEVELS: Readonly<Record<DrillLevel, Level>> = {
  1: {
    title: 'told in words, repaired without hands in',
    needsHands: false,
    shows: 'words',
    namedRightly: 1,
    twoFaults: 0,
    misleading: 0,
    readings: 'clear',
    missedOfTen: OFTEN,
    traps: 1,
    pressures: 0,
    surroundings: '',
  },
  2: {
    title: 'any fault, seen and measured',
    needsHands: true,
    shows: 'picturesAndNumbers',
    namedRightly: SYMPTOM_NAMED_RIGHTLY,
    twoFaults: 0,
    misleading: 0,
    readings: 'clear',
    missedOfTen: OFTEN,
    traps: 1,
    pressures: 0,
    surroundings: '',
  },
  3: {
    title: 'two faults, or one that comes and goes; readings near their limits',
    needsHands: true,
    shows: 'picturesAndNumbers',
    namedRightly: SYMPTOM_NAMED_RIGHTLY,
    twoFaults: 0.5,
    misleading: 1,
    readings: 'nearLimit',
    missedOfTen: NOW_AND_THEN,
    traps: 1,
    pressures: 1,
    surroundings: '',
  },
  4: {
    title: 'as three, in noise and gloves, and hurried along',
    needsHands: true,
    shows: 'picturesAndNumbers',
    namedRightly: SYMPTOM_NAMED_RIGHTLY,
    twoFaults: 0.5,
    misleading: 1,
    readings: 'nearLimit',
    missedOfTen: NOW_AND_THEN,
    traps: 2,
    pressures: 2,
    // A-weighted; expert estimate of an idling tractor at arm's length.
    surroundings:
      'Gloves on, and a recording of engine noise beside the tablet, at sixty-five to seventy-five decibels.',
  },
};

export const DRILL_LEVELS = [1, 2, 3, 4] as const satisfies readonly DrillLevel[];
