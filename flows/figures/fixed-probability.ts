import { possible, type Quantity } from './quantity.ts';

const PRIOR: Quantity = { name: 'chance that the repair was right', unit: '', low: 0, high: 1 };
const RATE: Quantity = { name: 'miss rate', unit: '', low: 0, high: 0.999 };
const CLEAN_TIES: Quantity = { name: 'number of clean ties', unit: '', low: 0, high: 1_000_000, whole: true };

/** What was believed before the clean run began. */
export interface RepairBelief {
  /** Chance that the repair cured it, as judged before any tie, 0 to 1. */
  readonly prior: number;
  /** Miss rate if it did not, 0 to 0.999. */
  readonly faultyRate: number;
  /** Miss rate if it did, 0 to 0.999. */
  readonly fixedRate: number;
}

/**
 * Chance that the knotter is fixed after `cleanTies` good ties and no miss, by Bayes' rule:
 * prior (1 - fixedRate)^n / (prior (1 - fixedRate)^n + (1 - prior) (1 - faultyRate)^n).
 * @throws ImpossibleFigure outside the ranges above, or for ties outside 0 to 1,000,000
 */
export function chanceFixed({ prior, faultyRate, fixedRate }: RepairBelief, cleanTies: number): number {
  const pi = possible(PRIOR, prior);
  const n = possible(CLEAN_TIES, cleanTies);
  const stillFaulty = possible({ ...RATE, name: 'miss rate of the faulty knotter' }, faultyRate);
  const cured = possible({ ...RATE, name: 'miss rate of a good knotter' }, fixedRate);
  // As a ratio, so that thousands of ties do not turn both chances into 0 / 0.
  const faultyOverFixed = Math.exp(n * (Math.log1p(-stillFaulty) - Math.log1p(-cured)));
  return pi === 0 ? 0 : pi / (pi + (1 - pi) * faultyOverFixed);
}
