import { topic } from '../phrase-rule.ts';

/** Asking the record for what was said; it answers and changes nothing. */
export const recalling = topic({
  'recall.record': {
    risk: 'navigation',
    forms: ['read me the whole record', 'read me the record', 'what have we got so far'],
    readBack: '',
  },
  'recall.part': {
    risk: 'navigation',
    forms: ['what did i say about {part}'],
    readBack: '',
  },
});
