/** How often something may really happen that was counted over a time. */

/**
 * Exact two-sided 95 % interval's upper end for the mean of a Poisson count.
 * Source: F. Garwood, "Fiducial limits for the Poisson distribution", Biometrika 28(3/4), 1936, 437-442.
 * @param events whole number, 0 or more
 */
export function mostExpected(events: number): number {
  if (!(Number.isInteger(events) && events >= 0)) throw new RangeError(`${events} is no count of events.`);
  let [low, high] = [events, 2 * events + 10];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chanceOfAtMost(events, middle) > 0.025) low = middle;
    else high = middle;
  }
  return high;
}

function chanceOfAtMost(events: number, mean: number): number {
  let term = Math.exp(-mean);
  let sum = term;
  for (let count = 1; count <= events; count++) {
    term *= mean / count;
    sum += term;
  }
  return sum;
}
