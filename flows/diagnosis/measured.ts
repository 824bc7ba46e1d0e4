import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Measurement, UnitId } from '../../grammar/measurements.ts';
import type { Measure } from '../families/family.ts';
import { convert } from '../figures/units.ts';

/** Every spoken unit in the SI unit of its dimension (m, N, kg, turns, m/kg), so that bands compare in any unit. */
const IN_SI: Readonly<Record<UnitId, (amount: number) => number>> = {
  inch: (amount) => convert('length', amount, 'in', 'm'),
  foot: (amount) => convert('length', amount, 'ft', 'm'),
  thou: (amount) => convert('length', amount, 'thou', 'm'),
  metre: (amount) => amount,
  millimetre: (amount) => convert('length', amount, 'mm', 'm'),
  poundForce: (amount) => convert('force', amount, 'lbf', 'N'),
  newton: (amount) => amount,
  kilogramForce: (amount) => convert('force', amount, 'kgf', 'N'),
  pound: (amount) => convert('mass', amount, 'lb', 'kg'),
  kilogram: (amount) => amount,
  turn: (amount) => amount,
  metrePerKilogram: (amount) => amount,
  footPerPound: (amount) => convert('runnage', amount, 'ft/lb', 'm/kg'),
};

/** The amount of a measurement in another unit of its dimension. */
export function amountIn(measurement: Measurement, unit: UnitId): number {
  return measurement.unit === unit
    ? measurement.amount
    : IN_SI[measurement.unit](measurement.amount) / IN_SI[unit](1);
}

/** Whether the first measurement is smaller; both must be of one dimension. */
export function isBelow(a: Measurement, b: Measurement): boolean {
  return IN_SI[a.unit](a.amount) < IN_SI[b.unit](b.amount);
}

/** Whether a value can be true at all; what is outside is questioned, never stored. */
export function isPlausible(measurement: Measurement, { plausible }: Measure): boolean {
  return !isBelow(measurement, plausible.low) && !isBelow(plausible.high, measurement);
}

/**
 * The finding a measured value stands for.
 * @throws RangeError where the bands leave the value out, which the family's validation rules out
 */
export function findingOf(measurement: Measurement, { bands }: Measure): MeaningId {
  const band = bands.find(({ below }) => !below || isBelow(measurement, below));
  if (!band) throw new RangeError(`No band holds ${measurement.amount} ${measurement.unit}.`);
  return band.means;
}
