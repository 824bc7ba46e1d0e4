import { HEARING_GRADES, type HearingGrade } from '../../grammar/hearing-grade.ts';

/**
 * From the ratio of voice to room noise, block by block, to one of four words that stand still long enough to be spoken.
 *
 * Worse is believed soon and better late: a voice trusted too long in noise costs a wrong record, one asked back too long
 * costs seconds. Worse goes as far down as it has to; better goes up one grade at a time, each on evidence of its own.
 */

interface GradeBounds {
  /** A grade is lost when the ratio stays under this, decibels. */
  readonly keptFromDb: number;
  /** And earned from the grade below when it stays at or over this, decibels. */
  readonly earnedFromDb: number;
}

/**
 * Ratios of voice to room noise, as the level meter reads them; under "poor" it is too loud. Set by what the bundled model
 * made of 28 phrases by seven synthetic voices, mixed with an idling engine (and pink noise), list of a state: right at
 * 15 dB 28, 10 dB 28 (27), 7.5 dB 27, 5 dB 25 (20), none of them wrong; at 2.5 dB 17 right and 1 wrong; at 0 dB 4 and 3.
 * The meter reads 0.3 to 1.5 dB more than was mixed. Field speech is worse than synthetic, so the bounds of "good" and
 * "fair" lie some decibels over what these figures ask.
 */
export const GRADE_BOUNDS: Readonly<Record<Exclude<HearingGrade, 'too loud'>, GradeBounds>> = {
  good: { keptFromDb: 13, earnedFromDb: 16 },
  fair: { keptFromDb: 8, earnedFromDb: 11 },
  poor: { keptFromDb: 4, earnedFromDb: 7 },
};

/** How long it has to be worse before it counts, in readings of a tenth of a second. Expert estimate. */
export const WORSE_AFTER_READINGS = 10;

/** And how long better: as long as the floor looks back. */
export const BETTER_AFTER_READINGS = 50;

/** The grade now, and the readings it may yet change by. */
export interface HearingQuality {
  readonly grade: HearingGrade;
  /** The ratios last read, newest last, decibels. */
  readonly recentDb: readonly number[];
  /** Readings since the grade last changed. */
  readonly settledFor: number;
}

/** Before anything was heard. */
export const UNHEARD: HearingQuality = { grade: 'good', recentDb: [], settledFor: 0 };

/** Whether enough was heard for the grade to mean anything. */
export function isHeardEnough({ recentDb }: HearingQuality): boolean {
  return recentDb.length >= WORSE_AFTER_READINGS;
}

/**
 * Takes a reading, ten a second.
 * @param ratioDb voice over room noise now, decibels
 */
export function hearingAfter(before: HearingQuality, ratioDb: number): HearingQuality {
  const recentDb = [...before.recentDb, ratioDb].slice(-BETTER_AFTER_READINGS);
  const settledFor = before.settledFor + 1;
  const grade = gradeAfter(before.grade, recentDb, settledFor);
  return { grade, recentDb, settledFor: grade === before.grade ? settledFor : 0 };
}

function gradeAfter(grade: HearingGrade, recentDb: readonly number[], settledFor: number): HearingGrade {
  const soon = recentDb.slice(-WORSE_AFTER_READINGS);
  if (soon.length === WORSE_AFTER_READINGS) {
    const kept = bestKeptAt(Math.max(...soon));
    if (rank(kept) < rank(grade)) return kept;
  }
  const next = HEARING_GRADES[rank(grade) + 1];
  if (next === undefined || next === 'too loud' || settledFor < BETTER_AFTER_READINGS) return grade;
  const isEarned =
    recentDb.length === BETTER_AFTER_READINGS && Math.min(...recentDb) >= GRADE_BOUNDS[next].earnedFromDb;
  return isEarned ? next : grade;
}

/** The best grade that a ratio still keeps. */
function bestKeptAt(ratioDb: number): HearingGrade {
  return (
    HEARING_GRADES.findLast((grade) => grade !== 'too loud' && ratioDb >= GRADE_BOUNDS[grade].keptFromDb) ??
    'too loud'
  );
}

function rank(grade: HearingGrade): number {
  return HEARING_GRADES.indexOf(grade);
}
