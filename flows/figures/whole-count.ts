/**
 * Binary fractions leave 540 bales as 539.9999999999; this much is rounding and not a missing bale.
 * Relative, far below anything that can be measured.
 */
const ROUNDING_SLACK = 1e-9;

/** Whole things that fit into `amount`, which is 0 or more. */
export function wholeThatFit(amount: number): number {
  return Math.floor(amount * (1 + ROUNDING_SLACK));
}

/** Whole things needed to reach `amount`, which is 0 or more. */
export function wholeNeeded(amount: number): number {
  return Math.ceil(amount * (1 - ROUNDING_SLACK));
}
