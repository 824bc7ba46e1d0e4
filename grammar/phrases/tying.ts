import { topic } from '../phrase-rule.ts';

/** Opens the drawing of one tie, in every state of a job. */
export const tyingOpening = topic({
  'tying.open': {
    risk: 'navigation',
    forms: ['show me how it ties a knot', 'show me how it ties'],
    readBack: '',
  },
});

/** Steps through one tie; understood only while it is shown. */
export const tying = topic({
  'tying.next': {
    risk: 'navigation',
    forms: ['show me the next step', 'and what happens next'],
    readBack: '',
  },
  'tying.back': {
    risk: 'navigation',
    forms: ['take me one step back', 'one step back'],
    readBack: '',
  },
});
