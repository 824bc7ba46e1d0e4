import type { Reach } from '../grammar/expecting.ts';
import { HEARING_GRADES, type HearingGrade } from '../grammar/hearing-grade.ts';
import type { Say } from '../grammar/say.ts';
import type { Channel } from './heard.ts';

/** How somebody wants spoken answers taken. What the noise forbids is forbidden in each. */
export const HEARING_CHOICES = ['automatic', 'alwaysAskBack', 'buttonsOnly'] as const;

export type HearingChoice = (typeof HEARING_CHOICES)[number];

/** What voice may do. */
export interface HearingPolicy {
  readonly reach: Reach;
  /**
   * What becomes of a spoken answer. One that is taken is said back before the next question, in every grade; one that is
   * held counts only after "that's right", said or touched.
   */
  readonly answers: 'taken' | 'held until accepted' | 'not taken';
  /** Whether a step of a lockout may be confirmed by voice at all. */
  readonly confirmsByVoice: boolean;
}

/**
 * On less evidence than this a spoken answer is held, however quiet it is: a near match becomes a question. Measured on what was
 * taken for an answer: of 97 phrases that were said 2 lie under it, of 27 single words by people 4; of 15 that were not
 * said 8.
 */
const SURE_MARGIN = 0.8;

/** What the noise leaves to voice. Whatever takes a lockout away is listened for, and taken, in every grade. */
const LEFT_BY_NOISE: Readonly<Record<HearingGrade, HearingPolicy>> = {
  good: { reach: 'everything', answers: 'taken', confirmsByVoice: true },
  fair: { reach: 'asked', answers: 'taken', confirmsByVoice: true },
  poor: { reach: 'asked', answers: 'held until accepted', confirmsByVoice: false },
  'too loud': { reach: 'voids', answers: 'not taken', confirmsByVoice: false },
};

/** What voice may do in a grade, by somebody's choice, which only ever takes from what the noise leaves. */
export function policyFor(grade: HearingGrade, choice: HearingChoice): HearingPolicy {
  const left = LEFT_BY_NOISE[grade];
  switch (choice) {
    case 'automatic':
      return left;
    case 'alwaysAskBack':
      return left.answers === 'not taken' ? left : { ...left, answers: 'held until accepted' };
    case 'buttonsOnly':
      return LEFT_BY_NOISE['too loud'];
  }
}

/** Whether an answer that came this way was heard so surely that nobody has to be asked whether it is right. */
export function isSurelyHeard(channel: Channel): boolean {
  return channel.by === 'touch' || channel.margin >= SURE_MARGIN;
}

/** Whether a confirmation that came this way was heard in a place quiet enough to trust it. */
export function mayConfirmByVoice(channel: Channel): boolean {
  return (
    channel.by === 'touch' || channel.hearing === undefined || LEFT_BY_NOISE[channel.hearing].confirmsByVoice
  );
}

/** What is different from now on, said once when the hearing changes. */
const WORSE = {
  fair: ['There is some noise now.', 'I listen for the answers only.'],
  poor: [
    'It is hard to hear you.',
    'I ask you back before I take an answer.',
    'Confirm the lockout by button.',
  ],
  'too loud': ['It is too loud for voice here.', 'Use the big buttons.', 'I still listen for stop.'],
} as const;

const BETTER = {
  poor: ['It is quieter. You can speak again.', 'I ask you back before I take an answer.'],
  fair: ['I hear you better now.', 'I take your answers at once.'],
  good: ['I hear you well again.', 'You can say everything.'],
} as const;

/** What is said of a change of the grade; nothing where somebody's choice leaves everything as it was. */
export function sayHearing(from: HearingGrade, to: HearingGrade, choice: HearingChoice): Say {
  if (from === to || choice === 'buttonsOnly') return [];
  const isWorse = HEARING_GRADES.indexOf(to) < HEARING_GRADES.indexOf(from);
  if (isWorse) return to === 'good' ? [] : WORSE[to];
  if (to === 'too loud') return [];
  // Whoever is asked back in every grade is not told otherwise.
  return to === 'fair' && choice === 'alwaysAskBack' ? BETTER.fair.slice(0, 1) : BETTER[to];
}

/** Said before an answer that is held, and after it. */
export const ASK_BACK_LINES = { heard: 'I heard:', isThatRight: 'Is that right?' } as const;

/** Every sentence about the hearing, for the recorded voice. */
export function hearingInventory(): readonly string[] {
  return [WORSE, BETTER]
    .flatMap((lines) => Object.values(lines).flat())
    .concat(Object.values(ASK_BACK_LINES));
}
