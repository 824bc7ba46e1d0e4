import { topic } from '../phrase-rule.ts';

/** Counting ties and closing the job. */
export const proving = topic({
  'tie.good': {
    risk: 'answer',
    forms: ['that was a good tie', 'good tie', 'tied all right', 'tied'],
    readBack: 'Tied.',
  },
  'tie.missed': {
    risk: 'answer',
    forms: ['another one missed again', 'that one missed', 'it missed', 'missed'],
    readBack: 'Missed.',
  },
  'proof.later': {
    risk: 'answer',
    forms: ["i'll count the ties later on", "i'll count them later"],
    readBack: 'Counting later.',
  },
});
