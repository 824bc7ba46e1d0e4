import { incompleteBeta } from './incomplete-beta.ts';

/**
 * Chance of at least `events` in `trials` independent trials of chance `p`: I_p(events, trials - events + 1),
 * NIST Digital Library of Mathematical Functions 8.17.5. Callers have checked that 0 <= events <= trials.
 */
export function chanceOfAtLeast(events: number, trials: number, p: number): number {
  return events === 0 ? 1 : incompleteBeta(p, events, trials - events + 1);
}
