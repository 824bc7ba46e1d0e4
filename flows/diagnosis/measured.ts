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

/** What may be said at all, in the unit somebody thinks in: the one they said it in. */
export function plausibleIn(
  { plausible }: Measure,
  unit: UnitId,
): { readonly low: Measurement; readonly high: Measurement } {
  if (plausible.low.unit === unit && plausible.high.unit === unit) return plausible;
  const [low, high] = roundedInward(amountIn(plausible.low, unit), amountIn(plausible.high, unit));
  return { low: { amount: low, unit }, high: { amount: high, unit } };
}

/** The ends of a span as round as they can be said without letting anything in that is not taken. */
export function roundedInward(low: number, high: number): [low: number, high: number] {
  // Far below what can be measured: a whole number of inches is one in millimetres too.
  const slack = 1e-9;
  const parts = (value: number) => (value < 10 ? 100 : 1);
  return [
    Math.ceil(low * parts(low) - slack) / parts(low),
    Math.floor(high * parts(high) + slack) / parts(high),
  ];
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
