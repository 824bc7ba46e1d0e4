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

  const notFound = massNotFound(probabilities, inspections);
  const underLockout = inspections.reduce(
    (set, { needsLockout }, index) => (needsLockout ? set | (1 << index) : set),
    0,
  );
  for (let done = everything - 1; done >= 0; done -= 1) {
    const stillSearching = notFound[done] ?? 0;
    const locked = (done & underLockout) !== 0;
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
  const notFound = massNotFound(probabilities, order);
  return order.reduce((total, { minutes, needsLockout }, index) => {
    const setUp = needsLockout && !locked ? lockoutMinutes : 0;
    locked ||= needsLockout;
    return total + (minutes + setUp) * (notFound[(1 << index) - 1] ?? 0);
  }, 0);
}

/** For every set of inspections, the probability that none of them has pointed at a fault. */
function massNotFound(probabilities: readonly number[], inspections: readonly Inspection[]): Float64Array {
  const sets = 1 << inspections.length;
  const total = new Float64Array(sets);
  const missed = new Float64Array(sets);
  probabilities.forEach((probability, cause) => {
    missed[0] = probability;
    total[0] = (total[0] ?? 0) + probability;
    for (let set = 1; set < sets; set += 1) {
      // The set without its last inspection is known already.
      const last = 31 - Math.clz32(set);
      missed[set] = (missed[set ^ (1 << last)] ?? 0) * (inspections[last]?.passes[cause] ?? 1);
      total[set] = (total[set] ?? 0) + (missed[set] ?? 0);
    }
  });
  return total;
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
