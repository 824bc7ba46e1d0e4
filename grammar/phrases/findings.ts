import { topic } from '../phrase-rule.ts';

/**
 * What an inspection finds. A good and a bad finding of the same check share no words worth mishearing
 * ("cracked right through" against "sound all over", not "a crack" against "no crack").
 */
export const findings = topic({
  'finding.cracked': {
    risk: 'answer',
    forms: ["it's cracked or broken", "it's cracked right through", "it's cracked", "it's broken"],
    readBack: 'Cracked.',
  },
  'finding.sound': {
    risk: 'answer',
    forms: ['it looks sound all over', 'it looks sound', 'it looks good to me'],
    readBack: 'Sound.',
  },
  'finding.packed': {
    risk: 'answer',
    forms: ["it's packed full of chaff", "it's full of chaff", "it's rusted up", "it's gummed up"],
    readBack: 'Packed.',
  },
  'finding.clean': {
    risk: 'answer',
    forms: ['clean all the way across', "it's clean and bright", "it's clean"],
    readBack: 'Clean.',
  },
  'finding.balesHeavier': {
    risk: 'answer',
    forms: ['the bales got a lot heavier', 'the bales are heavier now', 'the bales are tighter now'],
    readBack: 'The bales got heavier.',
  },
  'finding.balesSame': {
    risk: 'answer',
    forms: ['about the same as before', 'the bales are about the same'],
    readBack: 'The bales are about the same.',
  },
  'finding.slipsEasily': {
    risk: 'answer',
    forms: ['it slips out too easily', 'it slips too easily', 'it pulls out too easy'],
    readBack: 'It slips too easily.',
  },
  'finding.holdsEven': {
    risk: 'answer',
    forms: ['both sides hold the same', 'they hold about the same'],
    readBack: 'Both sides hold the same.',
  },
  'finding.holdsTooTight': {
    risk: 'answer',
    forms: ['it holds far too tight', "it's a lot tighter than the other"],
    readBack: 'It holds far too tight.',
  },
  'finding.grooved': {
    risk: 'answer',
    forms: ['my fingernail catches in a groove', "it's grooved and worn", "it's worn with a groove"],
    readBack: 'Grooved.',
  },
  'finding.smooth': {
    risk: 'answer',
    forms: ["it's smooth with sharp notches", "it's smooth all over", 'it feels smooth'],
    readBack: 'Smooth.',
  },
  'finding.dragsHard': {
    risk: 'answer',
    forms: ['that string drags a lot harder', 'the bad side drags harder'],
    readBack: 'The string drags too hard.',
  },
  'finding.dragsEven': {
    risk: 'answer',
    forms: ['both strings pull about even', 'the strings pull about even'],
    readBack: 'Both strings pull the same.',
  },
  'finding.stopsShort': {
    risk: 'answer',
    forms: ['the disc stops short of the mark', 'the notch stops short', 'it missed the mark'],
    readBack: 'The disc stops short.',
  },
  'finding.onTheMark': {
    risk: 'answer',
    forms: ['it came right back to the mark', 'it stops right on the mark'],
    readBack: 'It stops on the mark.',
  },
});
