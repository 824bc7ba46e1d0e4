import { topic } from '../phrase-rule.ts';

/** How the tablet sounds and looks, in every state of a job; none of it belongs to the job. */
export const settings = topic({
  'setting.louder': {
    risk: 'navigation',
    forms: ['speak louder to me', 'speak louder'],
    readBack: 'Louder.',
  },
  'setting.softer': {
    risk: 'navigation',
    forms: ['not so loud with your voice', 'speak softer'],
    readBack: 'Softer.',
  },
  'setting.dark': { risk: 'navigation', forms: ['use the dark screen'], readBack: 'Dark screen.' },
  'setting.bright': { risk: 'navigation', forms: ['use the bright screen'], readBack: 'Bright screen.' },
});
