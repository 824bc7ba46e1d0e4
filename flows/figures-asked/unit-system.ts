import type { UnitId } from '../../grammar/measurements.ts';
import type { SpokenUnit } from '../../grammar/say.ts';
import { amountIn } from '../diagnosis/measured.ts';
import { convert } from '../figures/units.ts';
import type { Wording } from '../wording.ts';

/** The units somebody thinks in: what a figure is answered in, and what is offered first where a number is tapped in. */
export type UnitSystem = Wording['units'];

export interface Amount {
  readonly amount: number;
  readonly unit: SpokenUnit;
}

type Twins = Readonly<Partial<Record<SpokenUnit, (amount: number) => Amount>>>;

/** The twin, in the other system, of every unit a figure is worked out in; what is in neither table is the same in both. */
const METRIC: Twins = {
  inch: measured('inch', 'millimetre'),
  foot: measured('foot', 'metre'),
  pound: measured('pound', 'kilogram'),
  poundForce: measured('poundForce', 'newton'),
  poundPerCubicFoot: (amount) => ({
    amount: convert('density', amount, 'lb/ft3', 'kg/m3'),
    unit: 'kilogramPerCubicMetre',
  }),
  poundPerSquareInch: (amount) => ({ amount: convert('pressure', amount, 'psi', 'kPa'), unit: 'kilopascal' }),
};

const CUSTOMARY: Twins = { metrePerKilogram: measured('metrePerKilogram', 'footPerPound') };

/** An amount in the units of a system. */
export function inSystem(amount: number, unit: SpokenUnit, system: UnitSystem): Amount {
  const toTwin = (system === 'metric' ? METRIC : CUSTOMARY)[unit];
  return toTwin ? toTwin(amount) : { amount, unit };
}

function measured(from: UnitId, to: UnitId): (amount: number) => Amount {
  return (amount) => ({ amount: amountIn({ amount, unit: from }, to), unit: to });
}
