import { describe, expect, test } from 'vitest';
import { bestOrder, type Inspection, minutesInOrder } from '../../flows/diagnosis/inspection-order.ts';

/**
 * D. Heckerman, J. S. Breese and K. Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM
 * 38(3), 1995: with one fault and independent costs the expected cost of repair is least when components are
 * inspected in falling order of probability over cost, ECR = sum over i of c_i * (1 - sum over j < i of p_j).
 */
describe('decision-theoretic troubleshooting', () => {
  const causes = { A: [0.4, 10], B: [0.25, 3], C: [0.2, 6], D: [0.15, 2] } as const;
  type Name = keyof typeof causes;
  const names = Object.keys(causes) as Name[];
  const probabilities = names.map((name) => causes[name][0]);

  function inspectionOf(name: Name): Inspection {
    return {
      id: name,
      minutes: causes[name][1],
      needsLockout: false,
      passes: names.map((other) => (other === name ? 0 : 1)),
    };
  }

  /** The published formula, summed term by term. */
  function expectedCostOfRepair(order: readonly Name[]): number {
    let notYetFound = 1;
    let cost = 0;
    for (const name of order) {
      const [probability, minutes] = causes[name];
      cost += minutes * notYetFound;
      notYetFound -= probability;
    }
    return cost;
  }

  test('inspects in falling order of probability over cost', () => {
    const byRatio = [...names].sort((a, b) => causes[b][0] / causes[b][1] - causes[a][0] / causes[a][1]);
    expect(byRatio).toEqual(['B', 'D', 'A', 'C']);
    expect(bestOrder(probabilities, names.map(inspectionOf), 0).order).toEqual(byRatio);
  });

  test('costs what the published formula gives', () => {
    expect(expectedCostOfRepair(['B', 'D', 'A', 'C'])).toBeCloseTo(11.7, 9);
    expect(bestOrder(probabilities, names.map(inspectionOf), 0).expectedMinutes).toBeCloseTo(11.7, 9);
  });

  test('is cheaper than the order of probability alone', () => {
    expect(expectedCostOfRepair(['A', 'B', 'C', 'D'])).toBeCloseTo(14.2, 9);
    expect(minutesInOrder(probabilities, names.map(inspectionOf), 0)).toBeCloseTo(14.2, 9);
  });
});
