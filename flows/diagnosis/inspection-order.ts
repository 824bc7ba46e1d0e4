/**
 * The order of inspections that finds a single fault in the fewest expected minutes, exactly.
 *
 * Where costs are independent and tests are sure, looking in falling order of probability over cost is best
 * (Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM 38(3), 1995).
 * A lockout that several inspections share breaks that rule, so the best order is found by dynamic programming
 * over the sets of inspections already done: 2^n sets of n inspections, small for the eight a family has.
 */
export interface Inspection {
  readonly id: string;
  readonly minutes: number;
  /** Needs the lockout, which is paid once. */
  readonly needsLockout: boolean;
  /** P(this inspection points at nothing | cause), one entry a cause; 0 for a sure test of that cause. */
  readonly passes: readonly number[];
}

export interface InspectionOrder {
  /** Ids, first to last; the search stops at the first inspection that points at a fault. */
  readonly order: readonly string[];
  readonly expectedMinutes: number;
}

/** More inspections than this would take more than the memory of a tablet should give. */
const MOST_INSPECTIONS = 16;

/**
 * @param probabilities P(cause), one entry a cause, in the order of `passes`; need not sum to one
 * @param inspections the inspections still open, at most 16
 * @param lockoutMinutes minutes to set the lockout up, or 0 where it is live
 * @throws RangeError where there are too many inspections
 */
export function bestOrder(
  probabilities: readonly number[],
  inspections: readonly Inspection[],
  lockoutMinutes: number,
): InspectionOrder {
  if (inspections.length > MOST_INSPECTIONS) {
    throw new RangeError(`An order of ${inspections.length} inspections is more than ${MOST_INSPECTIONS}.`);
  }
  const everything = (1 << inspections.length) - 1;
  const minutesFrom = new Float64Array(everything + 1);
  const first = new Int8Array(everything + 1).fill(-1);

  for (let done = everything - 1; done >= 0; done -= 1) {
    const stillSearching = massNotFound(probabilities, inspections, done);
    const locked = inspections.some(({ needsLockout }, index) => needsLockout && done & (1 << index));
    let best = Number.POSITIVE_INFINITY;
    inspections.forEach(({ minutes, needsLockout }, index) => {
      if (done & (1 << index)) return;
      const setUp = needsLockout && !locked ? lockoutMinutes : 0;
      const total = (minutes + setUp) * stillSearching + (minutesFrom[done | (1 << index)] ?? 0);
      if (total < best) {
        best = total;
        first[done] = index;
      }
    });
    minutesFrom[done] = best;
  }
  return { order: unroll(first, inspections), expectedMinutes: minutesFrom[0] ?? 0 };
}

/**
 * Expected minutes of a given order, for comparison with the best one.
 * @param order the inspections in the order they are done
 */
export function minutesInOrder(
  probabilities: readonly number[],
  order: readonly Inspection[],
  lockoutMinutes: number,
): number {
  let locked = false;
  return order.reduce((total, { minutes, needsLockout }, index) => {
    const setUp = needsLockout && !locked ? lockoutMinutes : 0;
    locked ||= needsLockout;
    return total + (minutes + setUp) * massNotFound(probabilities, order, (1 << index) - 1);
  }, 0);
}

/** Probability that none of the inspections in the set has pointed at a fault. */
function massNotFound(
  probabilities: readonly number[],
  inspections: readonly Inspection[],
  done: number,
): number {
  return probabilities.reduce((sum, probability, cause) => {
    const passed = inspections.reduce(
      (p, { passes }, index) => (done & (1 << index) ? p * (passes[cause] ?? 1) : p),
      1,
    );
    return sum + probability * passed;
  }, 0);
}

function unroll(first: Int8Array, inspections: readonly Inspection[]): string[] {
  const order: string[] = [];
  for (let done = 0, next = first[0] ?? -1; next >= 0; next = first[done] ?? -1) {
    const inspection = inspections[next];
    if (!inspection) break;
    order.push(inspection.id);
    done |= 1 << next;
  }
  return order;
}
