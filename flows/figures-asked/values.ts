import { type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { MissCount } from '../../grammar/measurements.ts';
import { type Say, sayBand, sayMeasure, sayOutOf, sayWhole } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { amountIn } from '../diagnosis/measured.ts';
import type { Assumption } from '../figures/figure.ts';
import { sayMeasurement } from '../sayings.ts';
import { type InputId, type InputTakes, inputOf } from './inputs.ts';

/** A value given for an input: an amount in the input's own unit, a count, or one of the answers it offers. */
export type FigureValue = number | MissCount | MeaningId;

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
    case 'choice':
      return takes.meanings.find((each) => each === meaning);
  }
}

/** What was said, read back in the unit it was said in. */
export function sayBack(takes: InputTakes, value: FigureValue, { measurement }: Slots): Say {
  return takes.kind === 'measurement' && measurement ? sayMeasurement(measurement) : sayValue(takes, value);
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
      return typeof value === 'object' && value.bales > 0 && value.misses <= value.bales;
    case 'choice':
      return takes.meanings.some((each) => each === value);
  }
}

/** The span in which a value is taken, as it is spoken; empty where there is none. */
export function saySpan(takes: InputTakes): Say {
  switch (takes.kind) {
    case 'measurement':
      return sayBand(takes.quantity.low, takes.quantity.high, takes.unit, precisionOfSpan(takes.quantity));
    case 'count': {
      const { low, high } = takes.quantity;
      return takes.unit ? sayBand(low, high, takes.unit) : [...sayWhole(low), 'to', ...sayWhole(high)];
    }
    case 'missCount':
    case 'choice':
      return [];
  }
}

/** A value as it is read back. */
export function sayValue(takes: InputTakes, value: FigureValue): Say {
  if (typeof value === 'object') return sayOutOf(value.misses, value.bales, 'bale');
  if (typeof value === 'string') return [ruleOf(value).readBack];
  switch (takes.kind) {
    case 'measurement':
      return sayMeasurement({ amount: value, unit: takes.unit });
    case 'count':
      return takes.unit ? sayMeasure(value, takes.unit) : sayWhole(value);
    case 'missCount':
    case 'choice':
      throw new TypeError(`${value} is no value of a ${takes.kind}.`);
  }
}

/** The name of an input and its value: "Bale length:" "thirty-six" "inches". */
export function sayNamed(id: InputId, value: FigureValue): Say {
  const { name, takes } = inputOf(id);
  return [name, ...sayValue(takes, value)];
}

function precisionOfSpan({ low, high }: { readonly low: number; readonly high: number }) {
  return { decimals: Number.isInteger(low) && Number.isInteger(high) ? 0 : 2 } as const;
}
