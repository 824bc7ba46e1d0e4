import { ImpossibleFigure, possible, type Quantity } from './quantity.ts';

const FIXED_RATE: Quantity = { name: 'miss rate of a good knotter', unit: '', low: 0.00001, high: 0.5 };
const FAULTY_RATE: Quantity = { name: 'miss rate of the faulty knotter', unit: '', low: 0.0001, high: 0.99 };
const WRONG_CALL: Quantity = { name: 'chance of a wrong call', unit: '', low: 0.0001, high: 0.4 };

/** What a run of ties must tell apart, and how often each wrong call may happen. */
export interface SequentialPlan {
  /** Miss rate of a knotter worth calling fixed, 0.00001 to 0.5. */
  readonly fixedRate: number;
  /** Miss rate of the unrepaired knotter, above `fixedRate` and up to 0.99. */
  readonly faultyRate: number;
  /** Chance of calling a fixed knotter faulty, 0.0001 to 0.4. */
  readonly falseAlarm: number;
  /** Chance of calling a faulty knotter fixed, 0.0001 to 0.4. */
  readonly missedFault: number;
}

/** The plan as weights: evidence starts at 0, climbs toward "still faulty" and sinks toward "fixed". */
export interface SequentialWeights {
  readonly perGoodTie: number;
  readonly perMiss: number;
  /** At or below this the knotter is called fixed. */
  readonly fixedAt: number;
  /** At or above this it is called still faulty. */
  readonly faultyAt: number;
}

export interface SequentialVerdict {
  readonly verdict: 'fixed' | 'still faulty' | 'keep tying';
  /** Natural logarithm of the likelihood ratio, faulty over fixed. */
  readonly evidence: number;
  /** Ties after which the verdict fell, or all of them so far. */
  readonly tiesUsed: number;
  /** Good ties in a row that would end it as fixed; 0 once there is a verdict. */
  readonly cleanTiesStillNeeded: number;
}

/**
 * Weights of the sequential probability ratio test. Source: Abraham Wald, "Sequential Analysis", 1947, chapter 3;
 * the bounds are ln((1 - missedFault) / falseAlarm) and ln(missedFault / (1 - falseAlarm)).
 * @throws ImpossibleFigure outside the ranges of `SequentialPlan`, or when the faulty rate is not above the fixed one
 */
export function sequentialWeights(plan: SequentialPlan): SequentialWeights {
  const fixedRate = possible(FIXED_RATE, plan.fixedRate);
  const faultyRate = possible(FAULTY_RATE, plan.faultyRate);
  const falseAlarm = possible(WRONG_CALL, plan.falseAlarm);
  const missedFault = possible(WRONG_CALL, plan.missedFault);
  if (faultyRate <= fixedRate) {
    throw new ImpossibleFigure(
      'The faulty knotter must miss more often than the good one. Say both miss rates again.',
    );
  }
  return {
    perGoodTie: Math.log1p(-faultyRate) - Math.log1p(-fixedRate),
    perMiss: Math.log(faultyRate / fixedRate),
    fixedAt: Math.log(missedFault / (1 - falseAlarm)),
    faultyAt: Math.log((1 - missedFault) / falseAlarm),
  };
}

/**
 * Judges ties in the order they came, stopping at the first verdict. Ties after it are ignored, because the wrong-call
 * chances hold only for the first crossing.
 * @param ties true for a good tie, false for a miss
 * @throws ImpossibleFigure as `sequentialWeights`
 */
export function judgeInSequence(plan: SequentialPlan, ties: readonly boolean[]): SequentialVerdict {
  const weights = sequentialWeights(plan);
  let evidence = 0;
  for (const [index, good] of ties.entries()) {
    evidence += good ? weights.perGoodTie : weights.perMiss;
    if (evidence <= weights.fixedAt) {
      return { verdict: 'fixed', evidence, tiesUsed: index + 1, cleanTiesStillNeeded: 0 };
    }
    if (evidence >= weights.faultyAt) {
      return { verdict: 'still faulty', evidence, tiesUsed: index + 1, cleanTiesStillNeeded: 0 };
    }
  }
  const cleanTiesStillNeeded = Math.ceil((weights.fixedAt - evidence) / weights.perGoodTie);
  return { verdict: 'keep tying', evidence, tiesUsed: ties.length, cleanTiesStillNeeded };
}
