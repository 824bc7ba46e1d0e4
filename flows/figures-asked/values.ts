import { type CalendarDay, isDayOfCalendar, sayDay } from '../../grammar/calendar.ts';
import { type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { MissCount } from '../../grammar/measurements.ts';
import { type Say, sayBand, sayMeasure, sayOutOf, sayWhole } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { amountIn, roundedInward } from '../diagnosis/measured.ts';
import type { Assumption } from '../figures/figure.ts';
import { sayMeasurement } from '../sayings.ts';
import { type InputId, type InputTakes, inputOf } from './inputs.ts';
import { FIGURE_LINES } from './lines.ts';
import { inSystem, type UnitSystem } from './unit-system.ts';

/** A value given for an input: an amount in the input's own unit, a count, or one of the answers it offers. */
export type FigureValue = number | MissCount | CalendarDay | MeaningId;

export type FigureValues = Readonly<Partial<Record<InputId, FigureValue>>>;

/** A worked-out figure as it is spoken, with everything it takes for granted. */
export interface FigureAnswer {
  readonly say: Say;
  readonly assumptions: readonly Assumption[];
}

/** What was said for an input, in its own unit; undefined where it was something else. */
export function valueSaid(takes: InputTakes, meaning: MeaningId, slots: Slots): FigureValue | undefined {
  switch (takes.kind) {
    case 'measurement':
      return slots.measurement && amountIn(slots.measurement, takes.unit);
    case 'count':
      return slots.count;
    case 'missCount':
      return slots.missCount;
    case 'day':
      return slots.day;
    case 'choice':
      return takes.meanings.find((each) => each === meaning);
  }
}

/** What was said, read back in the unit it was said in. */
export function sayBack(
  takes: InputTakes,
  value: FigureValue,
  { measurement }: Slots,
  system: UnitSystem,
): Say {
  return takes.kind === 'measurement' && measurement
    ? sayMeasurement(measurement)
    : sayValue(takes, value, system);
}

/** Whether a value can be true at all; what is outside is questioned, never kept. */
export function isPossible(takes: InputTakes, value: FigureValue): boolean {
  switch (takes.kind) {
    case 'measurement':
    case 'count': {
      const { low, high, whole } = takes.quantity;
      return (
        typeof value === 'number' &&
        value >= low &&
        value <= high &&
        (!(whole || takes.kind === 'count') || Number.isInteger(value))
      );
    }
    case 'missCount':
      return typeof value === 'object' && 'bales' in value && value.bales > 0 && value.misses <= value.bales;
    case 'day':
      return typeof value === 'object' && 'month' in value && isDayOfCalendar(value);
    case 'choice':
      return takes.meanings.some((each) => each === value);
  }
}

/** What a value has to be, as it is spoken after "it has to be"; empty where there is nothing to say. */
export function saySpan(takes: InputTakes, system: UnitSystem): Say {
  switch (takes.kind) {
    case 'measurement': {
      const { low, high } = takes.quantity;
      const [least, most] = [inSystem(low, takes.unit, system), inSystem(high, takes.unit, system)];
      return sayBand(...roundedInward(least.amount, most.amount), least.unit, { decimals: 2 });
    }
    case 'count': {
      const { low, high } = takes.quantity;
      return takes.unit ? sayBand(low, high, takes.unit) : [...sayWhole(low), 'to', ...sayWhole(high)];
    }
    case 'day':
      return [FIGURE_LINES.dayOfCalendar];
    case 'missCount':
    case 'choice':
      return [];
  }
}

/** A value as it is read back. */
export function sayValue(takes: InputTakes, value: FigureValue, system: UnitSystem): Say {
  if (typeof value === 'object') {
    return 'month' in value ? sayDay(value) : sayOutOf(value.misses, value.bales, 'bale');
  }
  if (typeof value === 'string') return [ruleOf(value).readBack];
  switch (takes.kind) {
    case 'measurement': {
      const { amount, unit } = inSystem(value, takes.unit, system);
      return unit === takes.unit
        ? sayMeasurement({ amount, unit: takes.unit })
        : sayMeasure(amount, unit, { decimals: 2 });
    }
    case 'count':
      return takes.unit ? sayMeasure(value, takes.unit) : sayWhole(value);
    case 'missCount':
    case 'day':
    case 'choice':
      throw new TypeError(`${value} is no value of a ${takes.kind}.`);
  }
}

/** The name of an input and its value: "Bale length:" "thirty-six" "inches". */
export function sayNamed(id: InputId, value: FigureValue, system: UnitSystem): Say {
  const { name, takes } = inputOf(id);
  return [name, ...sayValue(takes, value, system)];
}
