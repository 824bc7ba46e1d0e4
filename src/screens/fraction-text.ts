import type { Measurement } from '../../grammar/measurements.ts';

/** The finest mark on a rule, and the finest part a bolt is turned by. */
const FINEST = 32;

/** An amount as it is written: inches, feet and turns in fractions where they fall on a mark, anything else in decimals. */
export function fractionText({ amount, unit }: Measurement): string {
  const inFractions = unit === 'inch' || unit === 'foot' || unit === 'turn';
  const marks = amount * FINEST;
  if (!inFractions || Number.isInteger(amount) || !Number.isInteger(marks)) return String(amount);
  const whole = Math.floor(amount);
  let top = marks - whole * FINEST;
  let bottom = FINEST;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
