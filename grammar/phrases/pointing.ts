import { topic } from '../phrase-rule.ts';

/**
 * Pointing at an answer by its place on the screen. Understood only where answers are shown with numbers, and turned
 * into the answer itself before anything is recorded. There is no short form: "the first one" and "the third one" are
 * too near each other, and "the left one" is a side.
 */
export const pointing = topic({
  'point.first': {
    risk: 'navigation',
    forms: ['it looks like the very first one', 'it looks like the first one', 'i mean the first one'],
    readBack: '',
  },
  'point.second': {
    risk: 'navigation',
    forms: ['it looks like the second one', 'i mean the second one'],
    readBack: '',
  },
  'point.third': {
    risk: 'navigation',
    forms: ['it looks like the third one', 'i mean the third one'],
    readBack: '',
  },
  'point.fourth': {
    risk: 'navigation',
    forms: ['it looks like the fourth one', 'i mean the fourth one'],
    readBack: '',
  },
});

/** Leads to the rest of the answers; understood only where there are more than fit. */
export const moreAnswers = topic({
  'answers.more': {
    risk: 'navigation',
    forms: ['show me the other answers', 'none of these answers'],
    readBack: '',
  },
});
