import type { Inspection } from '../../flows/diagnosis/inspection-order.ts';
import type { InspectionTable } from './inspection-table.ts';

/** The table's inspections for the search: each finds its own cause for sure and nothing else. */
export function sureInspections({ rows }: InspectionTable): readonly Inspection[] {
  return rows.map(({ minutes, hands }, index) => ({
    id: String(index),
    minutes,
    needsLockout: hands,
    passes: rows.map((_, cause) => (cause === index ? 0 : 1)),
  }));
}

/** The same inspections, the likeliest cause first. */
export function likeliestFirst(table: InspectionTable): readonly Inspection[] {
  const probability = ({ id }: Inspection) => table.rows[Number(id)]?.probability ?? 0;
  return sureInspections(table).toSorted((a, b) => probability(b) - probability(a));
}
