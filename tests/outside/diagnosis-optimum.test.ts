import { describe, expect, test } from 'vitest';
import { bestOrder, minutesInOrder } from '../../flows/diagnosis/inspection-order.ts';
import { familyById } from '../../flows/families/all.ts';
import { FAMILY_IDS } from '../../flows/families/family.ts';
import { INSPECTION_TABLES, TABLE_LOCKOUT_MINUTES } from './inspection-table.ts';
import { likeliestFirst, sureInspections } from './sure-inspections.ts';

/**
 * Inspections that share a set-up are the dependent-cost case that the simple rule of Heckerman, Breese and
 * Rommelse (CACM 38(3), 1995) leaves out. The figures here were worked out by an independent script from the
 * project's own expert estimates.
 */
describe.each(FAMILY_IDS)('the order of inspections for %s', (id) => {
  const table = INSPECTION_TABLES[id];
  const probabilities = table.rows.map(({ probability }) => probability);

  test('costs the exact optimum', () => {
    const { expectedMinutes } = bestOrder(probabilities, sureInspections(table), TABLE_LOCKOUT_MINUTES);
    expect(Math.abs(expectedMinutes - table.best)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  test('costs what was worked out when the likeliest cause comes first', () => {
    const minutes = minutesInOrder(probabilities, likeliestFirst(table), TABLE_LOCKOUT_MINUTES);
    expect(Math.abs(minutes - table.byProbability)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  test('starts from the causes and the shares of the family as charted', () => {
    expect(Object.values(familyById(id).causes).map(({ prior }) => prior)).toEqual(probabilities);
  });
});

test('a lockout that is live, or a dearer one, changes the optimum as worked out', () => {
  const table = INSPECTION_TABLES.heldStrandLost;
  const probabilities = table.rows.map(({ probability }) => probability);
  expect(bestOrder(probabilities, sureInspections(table), 0).expectedMinutes).toBeCloseTo(10, 2);
  expect(bestOrder(probabilities, sureInspections(table), 20).expectedMinutes).toBeCloseTo(22.48, 2);
});
