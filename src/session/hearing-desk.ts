import { type ReadonlySignal, signal } from '@preact/signals';
import type { HeardEvent } from '../../flows/heard.ts';
import {
  ASK_BACK_LINES,
  type HearingChoice,
  type HearingPolicy,
  isSurelyHeard,
  policyFor,
  sayHearing,
} from '../../flows/hearing-policy.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { type HearingGrade, worseOf } from '../../grammar/hearing-grade.ts';
import { riskOf, taughtForm } from '../../grammar/lexicon.ts';
import { type Say, saySide, sayWhole } from '../../grammar/say.ts';
import type { VoiceTrace } from './job-session.ts';

/** An event, and what a voice leaves in the record beside it. */
export interface Traced {
  readonly event: HeardEvent;
  readonly trace?: VoiceTrace;
}

/** What came of an event: it goes on to whoever takes it, or the person is asked. */
export type HearingTurn = ({ readonly kind: 'goesOn' } & Traced) | { readonly kind: 'asks' };

/**
 * Stands between what was heard and the job, and trusts the voice no further than its evidence, the noise and the person allow. It holds
 * spoken answers until they are accepted, and knows what has to be said of the hearing. A grade holds from when it is
 * said, or sooner where it is worse.
 */
export interface HearingDesk {
  /** The grade that holds. */
  readonly grade: ReadonlySignal<HearingGrade>;
  policy(): HearingPolicy;
  /** Whether answers by voice are taken at all. */
  readonly takesVoice: boolean;
  /** The held answer, read back for acceptance, where there is one; else what is asked. */
  promptOver(asked: Prompt): Prompt;
  /** @param asked what is asked, behind an answer that is held */
  take(heard: Traced, asked: Pick<Prompt, 'state' | 'expecting'>): HearingTurn;
  /**
   * Takes how well the ears hear now.
   * @returns whether something has to be said as soon as nobody is speaking
   */
  hear(grade: HearingGrade): boolean;
  /** What has to be said once before anything else; empties itself. */
  toSay(): Say;
  /** Drops a held answer, because something happened at the machine. */
  end(): void;
}

/** @param choice how somebody wants spoken answers taken, now */
export function openHearingDesk(choice: () => HearingChoice): HearingDesk {
  const grade = signal<HearingGrade>('good');
  const held = signal<Traced | undefined>(undefined);
  /** Better than what holds, and not said yet. */
  let better: HearingGrade | undefined;
  let lines: Say = [];

  const policy = () => policyFor(grade.value, choice());
  const adopt = (to: HearingGrade) => {
    lines = [...lines, ...sayHearing(grade.value, to, choice())];
    grade.value = to;
    better = undefined;
  };
  const hold = (heard: Traced): HearingTurn => {
    held.value = heard;
    return { kind: 'asks' };
  };

  return {
    grade,
    policy,
    get takesVoice() {
      return policy().answers !== 'not taken';
    },
    promptOver: (asked) => (held.value ? acceptancePrompt(held.value.event, asked) : asked),
    take(heard, asked) {
      const { event } = heard;
      const isHeldNext = mustBeAccepted(event, asked, policy());
      if (held.value) {
        const before = held.value;
        if (event.type === 'yes') {
          held.value = undefined;
          return { kind: 'goesOn', ...before };
        }
        if (event.type === 'no' || event.type === 'goBack') {
          held.value = undefined;
          return { kind: 'asks' };
        }
        if (isHeldNext) return hold(heard);
        if (riskOf(event.type) !== 'navigation') held.value = undefined;
        return { kind: 'goesOn', ...heard };
      }
      if (isHeldNext) return hold(heard);
      // A word to find one's way by that was hardly heard is not worth a question of its own: the one asked stands.
      if (
        !isSurelyHeard(event.channel) &&
        riskOf(event.type) === 'navigation' &&
        !isAcceptance(asked.state)
      ) {
        return { kind: 'asks' };
      }
      return { kind: 'goesOn', ...heard };
    },
    hear(heard) {
      const isWorse = heard !== grade.value && worseOf(heard, grade.value) === heard;
      if (isWorse || (grade.value === 'too loud' && heard !== 'too loud')) adopt(heard);
      // Told with the next question: nobody is interrupted for it, and until then the stricter rules hold.
      else better = heard === grade.value ? undefined : heard;
      return lines.length > 0;
    },
    toSay() {
      if (better) adopt(better);
      const said = lines;
      lines = [];
      return said;
    },
    end() {
      held.value = undefined;
    },
  };
}

/** Whether a spoken answer has to be read back and accepted before it counts. */
export function mustBeAccepted(
  event: HeardEvent,
  asked: Pick<Prompt, 'state' | 'expecting'>,
  { answers }: HearingPolicy,
): boolean {
  const isDoubtful = answers === 'held until accepted' || !isSurelyHeard(event.channel);
  return isDoubtful && isSpokenAnswer(event, asked);
}

/**
 * Whether it is an answer by voice that nothing else checks. Numbers are read back by whoever asks for them, except while bales
 * are counted; a confirmation has its own rules; and what takes a lockout away is never held.
 */
function isSpokenAnswer(
  { type, channel }: HeardEvent,
  { state, expecting }: Pick<Prompt, 'state' | 'expecting'>,
): boolean {
  if (channel.by === 'touch' || isAcceptance(state)) return false;
  if (type.startsWith('value.')) return state === 'count.bales';
  const risk = riskOf(type);
  return risk === 'answer' || (risk === 'navigation' && expecting.meanings.includes(type));
}

/** Whether a state reads something back and asks whether it is right. */
function isAcceptance(state: string): boolean {
  return /(^|\.)accept/.test(state);
}

function acceptancePrompt({ type, slots }: HeardEvent, behind: Prompt): Prompt {
  const { side, count } = slots;
  const words = count === undefined ? [taughtForm(type)] : sayWhole(count);
  const question = [
    ASK_BACK_LINES.heard,
    ...words,
    ...(side ? saySide(side) : []),
    ASK_BACK_LINES.isThatRight,
  ];
  return {
    ...behind,
    state: 'accept.answer',
    notices: [],
    question,
    brief: question,
    expecting: { meanings: ['yes', 'no'] },
  };
}
