/**
 * How loud the loud moments of a noise are: the power that 97 of 100 frames stay under, followed frame by frame. For a
 * steady noise it is some 2.2 times the mean power of a band, 2.7 as followed (measured on pink noise and an idling engine), for hail or an
 * impact wrench six to eight times.
 */
export const LOUD_SHARE = 0.97;
export const LOUD_OVER_MEAN_WHEN_STEADY = 2.7;

/** Decibels between the fall of a hundred quiet frames and one loud one: few enough to stand still, enough to learn in 2 s. */
const STEP_DB = 1;
const UP = 10 ** ((STEP_DB * LOUD_SHARE) / 10);
const DOWN = 10 ** ((-STEP_DB * (1 - LOUD_SHARE)) / 10);

/**
 * The loudness after one more frame: a step up where the frame is louder, a small one down where it is not, so that it
 * rests where the shares balance (H. Robbins, S. Monro, "A Stochastic Approximation Method", Annals of Mathematical
 * Statistics 22(3), 1951).
 * @param loud power so far, over 0
 * @param power of the frame
 */
export function loudAfter(loud: number, power: number): number {
  return loud * (power > loud ? UP : DOWN);
}
