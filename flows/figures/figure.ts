/** How far a number can be trusted, spoken and shown beside every figure that leans on it. */
export type Standing =
  | 'entered'
  | 'published'
  | 'derived'
  | 'common practice, no source'
  | 'from memory'
  | 'expert estimate';

/** One thing a figure takes for granted, as a plain sentence. */
export interface Assumption {
  readonly says: string;
  readonly standing: Standing;
  /** Title and number of the publication, where there is one. */
  readonly source?: string;
}

/** A worked-out value with its unit and what it takes for granted: enough to speak it, show it and question it. */
export interface Figure<Unit extends string> {
  readonly value: number;
  readonly unit: Unit;
  readonly assumptions: readonly Assumption[];
}

export function figure<Unit extends string>(
  value: number,
  unit: Unit,
  ...assumptions: readonly Assumption[]
): Figure<Unit> {
  return { value, unit, assumptions };
}
