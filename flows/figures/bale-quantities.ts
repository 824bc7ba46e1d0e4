import type { Quantity } from './quantity.ts';

/**
 * Spans of what can be said about a small square bale and its twine. They are wide: their work is to catch a
 * misheard number, not to judge a machine. Expert estimates.
 */
export const BALE_LENGTH: Quantity = { name: 'bale length', unit: 'inches', low: 12, high: 60 };
/** The side the string wraps besides the length. */
export const BALE_HEIGHT: Quantity = { name: 'bale height', unit: 'inches', low: 8, high: 24 };
export const BALE_WIDTH: Quantity = { name: 'bale width', unit: 'inches', low: 8, high: 30 };
export const BALE_WEIGHT: Quantity = { name: 'bale weight', unit: 'pounds', low: 5, high: 300 };
/** Two on the balers this is written for; three-string balers exist. */
export const STRINGS: Quantity = { name: 'number of strings', unit: '', low: 1, high: 3, whole: true };
export const TWINE_PER_STRING: Quantity = { name: 'twine a string', unit: 'feet', low: 3, high: 20 };
export const STROKES_PER_MINUTE: Quantity = { name: 'strokes a minute', unit: '', low: 20, high: 150 };
