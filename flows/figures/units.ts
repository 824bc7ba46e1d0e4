import type { Figure } from './figure.ts';

/**
 * Units of the trade and their size in SI units. The factors for inch, foot, pound, pound-force and short ton are
 * exact by definition: NIST Special Publication 811 (2008), appendix B. A thou, a sixteenth, an eighth and a
 * quarter are the spoken parts of an inch.
 */
const INCH_M = 0.0254;
const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;
const STANDARD_GRAVITY_M_S2 = 9.80665;
const POUND_FORCE_N = POUND_KG * STANDARD_GRAVITY_M_S2;

const SIZES = {
  length: {
    m: 1,
    mm: 0.001,
    in: INCH_M,
    ft: FOOT_M,
    thou: INCH_M / 1000,
    sixteenth: INCH_M / 16,
    eighth: INCH_M / 8,
    quarter: INCH_M / 4,
  },
  volume: { m3: 1, ft3: FOOT_M ** 3, in3: INCH_M ** 3 },
  mass: { kg: 1, g: 0.001, lb: POUND_KG, 'short ton': 2000 * POUND_KG, tonne: 1000 },
  /** A spring scale marked in kilos shows kilogram-force. */
  force: { N: 1, lbf: POUND_FORCE_N, kgf: STANDARD_GRAVITY_M_S2 },
  pressure: { kPa: 1000, psi: POUND_FORCE_N / INCH_M ** 2 },
  density: { 'kg/m3': 1, 'lb/ft3': POUND_KG / FOOT_M ** 3 },
  /** Length of twine in a given mass. */
  runnage: { 'm/kg': 1, 'ft/lb': FOOT_M / POUND_KG },
  /** A flat is one side of a hexagon nut. */
  angle: { deg: 1, turn: 360, flat: 60 },
} as const;

export type Dimension = keyof typeof SIZES;
export type UnitOf<D extends Dimension> = keyof (typeof SIZES)[D] & string;

/** The same table, typed so that a dimension and its units stay tied together. */
const SIZE_IN_SI: { readonly [D in Dimension]: Readonly<Record<UnitOf<D>, number>> } = SIZES;

/**
 * Converts a value between two units of one dimension; the types keep inches from becoming pounds.
 * @example convert('length', 1, 'in', 'mm') // 25.4
 */
export function convert<D extends Dimension>(
  dimension: D,
  value: number,
  from: UnitOf<D>,
  to: UnitOf<D>,
): number {
  const sizes = SIZE_IN_SI[dimension];
  return value * (sizes[from] / sizes[to]);
}

/** The same figure in another unit of its dimension, with what it takes for granted. */
export function inUnit<D extends Dimension, To extends UnitOf<D>>(
  dimension: D,
  { value, unit, assumptions }: Figure<UnitOf<D>>,
  to: To,
): Figure<To> {
  return { value: convert(dimension, value, unit, to), unit: to, assumptions };
}
