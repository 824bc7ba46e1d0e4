import { topic } from '../phrase-rule.ts';

/** Setting up a drill, and refusing whoever asks for a short cut in one; understood nowhere else. */
export const drilling = topic({
  'drill.levelOne': {
    risk: 'navigation',
    forms: ['level one told in words', 'level one'],
    readBack: 'Level one.',
  },
  'drill.levelTwo': {
    risk: 'navigation',
    forms: ['level two any fault', 'level two'],
    readBack: 'Level two.',
  },
  'drill.levelThree': {
    risk: 'navigation',
    forms: ['level three tricky ones', 'level three'],
    readBack: 'Level three.',
  },
  'drill.levelFour': {
    risk: 'navigation',
    forms: ['level four noise and hurry', 'level four'],
    readBack: 'Level four.',
  },
  'drill.anyNumber': {
    risk: 'navigation',
    forms: ['pick a number for me', 'any number will do'],
    readBack: 'Any number.',
  },
  'pressure.refuse': {
    risk: 'navigation',
    forms: ['we do it the safe way', 'nobody touches it now', "i won't do that"],
    readBack: 'You refused.',
  },
  'pressure.giveIn': {
    risk: 'navigation',
    forms: ['all right just this once', 'go ahead then'],
    readBack: 'You gave in.',
  },
});
