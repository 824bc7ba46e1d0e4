import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { BALE_FIGURES } from './about-bales.ts';
import { KNOT_FIGURES } from './about-knots.ts';
import { MISS_FIGURES } from './about-misses.ts';
import { TIMING_FIGURES } from './about-timing.ts';
import { TWINE_FIGURES } from './about-twine.ts';
import { WEAR_FIGURES } from './about-wear.ts';
import type { FigureQuestion } from './figure-question.ts';

/** Every figure there is. */
export const FIGURES: Readonly<Record<FigureMeaning, FigureQuestion>> = {
  ...TWINE_FIGURES,
  ...BALE_FIGURES,
  ...KNOT_FIGURES,
  ...MISS_FIGURES,
  ...TIMING_FIGURES,
  ...WEAR_FIGURES,
};
