import { STRINGS, TWINE_PER_STRING } from './bale-quantities.ts';
import { type Figure, figure } from './figure.ts';
import { ImpossibleFigure, possible, type Quantity } from './quantity.ts';
import { wholeThatFit } from './whole-count.ts';

export const FOOTAGE: Quantity = { name: 'length on the label', unit: 'feet', low: 100, high: 100_000 };
export const BALLS: Quantity = { name: 'number of balls', unit: '', low: 1, high: 24, whole: true };

/**
 * What the length on a label is the length of. Sellers' wording differs ("9,000 feet a bale of twine", "a pair of
 * 9,000-foot rolls"), and a wrong guess is wrong by the number of balls in the package.
 */
export type LabelledFor = 'each ball' | 'whole package' | 'not known';

export interface TwinePackage {
  /** 100 to 100,000 ft. */
  readonly labelFt: number;
  readonly labelledFor: LabelledFor;
  /** Balls in the package, at least one for each string. */
  readonly balls: number;
}

/** Bales a package ties, or the question that must be answered first with both answers worked out. */
export type BalesFromPackage =
  | { readonly kind: 'known'; readonly bales: Figure<'bales'> }
  | {
      readonly kind: 'ask what the label means';
      readonly ifEachBall: Figure<'bales'>;
      readonly ifWholePackage: Figure<'bales'>;
    };

/**
 * Whole bales tied by a package. Balls are chained end to end, as many on each string; when they do not divide
 * evenly, the balls left over tie nothing until another is bought.
 * @param twinePerStringFt 3 to 20 ft, see `twinePerString`
 * @param strings 1 to 3
 * @throws ImpossibleFigure outside those ranges, or with fewer balls than strings
 */
export function balesPerPackage(
  twine: TwinePackage,
  twinePerStringFt: number,
  strings = 2,
): BalesFromPackage {
  const labelFt = possible(FOOTAGE, twine.labelFt);
  const balls = possible(BALLS, twine.balls);
  const chained = Math.floor(balls / possible(STRINGS, strings));
  if (chained === 0) {
    throw new ImpossibleFigure(
      `${strings} strings need at least ${strings} balls, not ${balls}. Say the number of balls again.`,
    );
  }
  const perStringFt = possible(TWINE_PER_STRING, twinePerStringFt);
  const balesWith = (ballFt: number) =>
    figure(wholeThatFit((chained * ballFt) / perStringFt), 'bales', {
      says: `${chained} of the balls on each string, all used to the end.`,
      standing: 'derived',
    });
  const ifEachBall = balesWith(labelFt);
  const ifWholePackage = balesWith(labelFt / balls);
  switch (twine.labelledFor) {
    case 'each ball':
      return { kind: 'known', bales: ifEachBall };
    case 'whole package':
      return { kind: 'known', bales: ifWholePackage };
    case 'not known':
      return { kind: 'ask what the label means', ifEachBall, ifWholePackage };
  }
}
