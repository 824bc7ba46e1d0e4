import { topic } from '../phrase-rule.ts';

/** The first words of a job: what the knotter does, as an operator would put it. */
export const symptoms = topic({
  'symptom.heldStrandLost': {
    risk: 'answer',
    forms: [
      '{subject} keeps letting go',
      '{subject} lets go of the string',
      'the string pulls out of the disc',
      'the string slips out before it ties',
      "{subject} won't hold the string",
      'it misses when the bales are tight',
      'the held end is chewed off',
    ],
    readBack: 'It lets go of the held strand.',
  },
});
