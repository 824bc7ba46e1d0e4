import { topic } from '../phrase-rule.ts';

/**
 * Meanings that carry a number. Their words are ordinary graph words in any order, so they have no fixed
 * forms here: measurements.ts builds and reads them. They are read back and must be accepted before they count.
 */
export const values = topic({
  'value.measured': { risk: 'answer', forms: ['{measurement}'], readBack: '' },
  'value.count': { risk: 'answer', forms: ['{count}'], readBack: '' },
  'value.missRate': { risk: 'answer', forms: ['{misses} out of {bales}'], readBack: '' },
  'value.day': { risk: 'answer', forms: ['{day}'], readBack: '' },
});
