/** How well the ears hear, worst first, in the words that are shown. What is listened for and what voice may do follow from it. */
export const HEARING_GRADES = ['too loud', 'poor', 'fair', 'good'] as const;

export type HearingGrade = (typeof HEARING_GRADES)[number];

/** The worse of two grades. */
export function worseOf(a: HearingGrade, b: HearingGrade): HearingGrade {
  return HEARING_GRADES.indexOf(a) < HEARING_GRADES.indexOf(b) ? a : b;
}
