import type { CalendarDay } from '../../grammar/calendar.ts';
import type { FigureMeaning } from '../../grammar/lexicon.ts';
import type { MissCount } from '../../grammar/measurements.ts';
import { LARGEST_SAID, type Say, type SpokenUnit, sayMeasure } from '../../grammar/say.ts';
import type { InputId } from './inputs.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import { inSystem, type UnitSystem } from './unit-system.ts';
import type { FigureAnswer, FigureValues } from './values.ts';

/** A figure that can be asked for: what it has to be told, and what it then says. */
export interface FigureQuestion {
  readonly inputs: readonly InputId[];
  /** The figure whose values it goes on with, where that was worked out just before. */
  readonly goesOnFrom?: FigureMeaning;
  /**
   * Works the figure out.
   * @param given a possible value for each of `inputs`
   * @throws ImpossibleFigure where the values, each possible by itself, do not fit together
   */
  readonly answer: (given: Given) => FigureAnswer;
}

/** Typed access to the values of a figure, and the units its answer is given in. */
export class Given {
  readonly #values: FigureValues;
  readonly #system: UnitSystem;

  constructor(values: FigureValues, system: UnitSystem) {
    this.#values = values;
    this.#system = system;
  }

  number(id: InputId): number {
    const value = this.#values[id];
    if (typeof value !== 'number') throw new TypeError(`The figure was not given a number for ${id}.`);
    return value;
  }

  misses(id: 'missCount'): MissCount {
    const value = this.#values[id];
    if (typeof value !== 'object' || !('misses' in value)) {
      throw new TypeError(`The figure was not given a count for ${id}.`);
    }
    return value;
  }

  day(id: InputId): CalendarDay {
    const value = this.#values[id];
    if (typeof value !== 'object' || !('month' in value)) {
      throw new TypeError(`The figure was not given a day for ${id}.`);
    }
    return value;
  }

  chose(id: InputId): string {
    const value = this.#values[id];
    if (typeof value !== 'string') throw new TypeError(`The figure was not given a choice for ${id}.`);
    return value;
  }

  /** A worked-out amount in the units that were asked for, to three places or so, as far as it is worth saying. */
  say(value: number, unit: SpokenUnit): Say {
    const said = inSystem(value, unit, this.#system);
    if (said.amount > LARGEST_SAID) return [LINES.moreThan, ...sayMeasure(LARGEST_SAID, said.unit)];
    const isCount = COUNTS.includes(said.unit);
    const decimals = isCount || said.amount >= 100 ? 0 : said.amount >= 10 ? 1 : 2;
    return sayMeasure(decimals === 0 ? Math.round(said.amount) : said.amount, said.unit, { decimals });
  }
}

const COUNTS: readonly SpokenUnit[] = ['bale', 'tie'];

/** A bale as the string sees it. */
export function baleOf(given: Given): { readonly lengthIn: number; readonly heightIn: number } {
  return { lengthIn: given.number('baleLength'), heightIn: given.number('baleHeight') };
}

/** A chance in per cent, never "zero" for what is possible nor "a hundred" for what is not sure. */
export function percent(chance: number): Say {
  const value = 100 * chance;
  if (chance > 0 && value < 0.1) return [LINES.lessThan, ...sayMeasure(0.1, 'percent', { decimals: 1 })];
  if (chance < 1 && value > 99.9) return [LINES.moreThan, ...sayMeasure(99.9, 'percent', { decimals: 1 })];
  return sayMeasure(value, 'percent', { decimals: 1 });
}
