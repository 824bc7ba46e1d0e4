import type { Standing } from './figure.ts';

/**
 * Knot strengths printed on labels of small-bale twine, in pounds-force: what to offer when the label is asked for.
 * The published two are from a trade magazine's "Baler twine: know what you're buying"; the rest are from memory.
 */
export const KNOT_STRENGTH_CLASSES: readonly { readonly lbf: number; readonly standing: Standing }[] = [
  { lbf: 110, standing: 'from memory' },
  { lbf: 130, standing: 'published' },
  { lbf: 170, standing: 'from memory' },
  { lbf: 190, standing: 'published' },
  { lbf: 210, standing: 'from memory' },
];

/** Runnages of baler twine in metres a kilogram, from an encyclopaedia page on baling twine. */
export const RUNNAGE_GRADES_M_PER_KG: readonly number[] = [110, 130, 150, 200, 320, 400, 750];
