import { topic } from '../phrase-rule.ts';

/** How spoken answers are taken on this tablet. The first goes by the noise; the others only ever trust the voice less. */
export const hearing = topic({
  'hearing.automatic': {
    risk: 'navigation',
    forms: ['go by the noise around me', 'go by the noise again'],
    readBack: 'I go by the noise.',
  },
  'hearing.alwaysAskBack': {
    risk: 'navigation',
    forms: ['always ask me back before you take it', 'always ask me back'],
    readBack: 'I ask you back before I take an answer.',
  },
  'hearing.buttonsOnly': {
    risk: 'navigation',
    forms: ['only the buttons from now on', 'take only the buttons'],
    readBack: 'Buttons only. I still listen for stop.',
  },
});
