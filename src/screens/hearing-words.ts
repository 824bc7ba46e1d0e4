import type { HearingChoice } from '../../flows/hearing-policy.ts';
import type { HearingGrade } from '../../grammar/hearing-grade.ts';

/** What each grade means for whoever speaks, to be read at leisure. */
export const GRADE_MEANS: Readonly<Record<HearingGrade, string>> = {
  good: 'everything can be said',
  fair: 'only the answers asked for, stop, and the words to find your way; what was taken is said back',
  poor: 'every answer is asked back; the lockout is confirmed by button',
  'too loud': 'buttons only; stop is still listened for',
};

export const CHOICE_WORDS: Readonly<Record<HearingChoice, string>> = {
  automatic: 'Go by the noise',
  alwaysAskBack: 'Always ask me back',
  buttonsOnly: 'Buttons only',
};
