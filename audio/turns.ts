import { assign, not, setup } from 'xstate';
import type { Utterance } from './ears/utterance.ts';

/**
 * Whose turn it is to speak: the mouth's or the person's, never both. The ears are shut while the mouth speaks and while its
 * echo dies away, but for a stop word. The chart says when to do what; it knows neither questions nor answers.
 *
 *     idle -> speaking -> echoTail -> listening <-> hearing -> deciding -> (ask) speaking ...
 *                                  -> resting, where it is too loud to listen
 *
 * Two ways to fail, counted apart: nothing was said, or what was said was not understood. Each failure in a row is met
 * with another sentence: a short one, then what can be said, then the big buttons, with the voice still listening.
 */

/** What is being asked. The words to speak and the phrases to listen for are looked up by whoever provides the effects. */
export interface Prompt {
  readonly id: string;
  /** False for a safety warning: it is heard to its end, whatever is said or touched. */
  readonly mayBeInterrupted: boolean;
}

/** How the last answer failed. */
export type Failure = 'nothing heard' | 'not understood';

/** What the mouth is to say for the prompt. No two in a row are alike, except when the prompt itself is asked again. */
export type Saying =
  | { readonly kind: 'prompt' }
  | { readonly kind: 'short again'; readonly after: Failure }
  | { readonly kind: 'what can be said'; readonly after: Failure }
  | { readonly kind: 'big buttons'; readonly after: Failure };

/** What the chart has done for it. Each must return at once; what they lead to comes back as events. */
export interface TurnEffects {
  /** Makes the ears ready for the prompt's answers. Called while the mouth begins to ask, so they are warm when it ends. */
  prepareEars(prompt: Prompt): void;
  /** Shuts the ears, but for the stop words if those may cut in. */
  shutEars(mayStopCutIn: boolean): void;
  /** Gives the floor by a tone, if a person may speak next. */
  giveFloor(): void;
  openEars(): void;
  /** Opens the ears for nothing but stop words and the noise of the room. */
  restEars(): void;
  /** Says it; the end comes back as `mouth.finished`. */
  speak(prompt: Prompt, saying: Saying): void;
  /** Silences the mouth at once. No `mouth.finished` need follow. */
  hush(): void;
  /** Takes what was heard to a meaning: `ask` follows when it has one, `refused` when it has none. */
  decide(utterance: Utterance): void;
  /** Puts the answers on the screen as big buttons. */
  showBigButtons(prompt: Prompt): void;
}

export type TurnEvent =
  /** Asks something new, or the same again. Cuts into everything. */
  | { readonly type: 'ask'; readonly prompt: Prompt }
  | { readonly type: 'mouth.finished' }
  /** The stop word, heard while the mouth speaks. */
  | { readonly type: 'stop.heard' }
  /** A touch that only silences. */
  | { readonly type: 'touch.hush' }
  /** The prompt was answered by touch; `ask` follows. */
  | { readonly type: 'touch.answered' }
  | { readonly type: 'speech.started' }
  | { readonly type: 'speech.dropped' }
  | { readonly type: 'utterance'; readonly utterance: Utterance }
  /** What was heard means nothing here. */
  | { readonly type: 'refused' }
  | { readonly type: 'ears.failed' }
  | { readonly type: 'ears.recovered' }
  /** It is too loud for answers by voice, or they are not wanted. */
  | { readonly type: 'voice.rests' }
  | { readonly type: 'voice.returns' }
  /** The tablet sleeps or shows something else. */
  | { readonly type: 'suspend' }
  | { readonly type: 'resume' };

export interface TurnContext {
  readonly prompt: Prompt;
  readonly saying: Saying;
  readonly nothingHeard: number;
  readonly notUnderstood: number;
  readonly doEarsWork: boolean;
  readonly doesVoiceRest: boolean;
}

/** Times of the dialogue, milliseconds. */
export const turnTimesMs = {
  /** The tone that gives the floor, 140, and its echo and that of our voice in a machine shed, 150 to 300. */
  echoTail: 400,
  /** Until nothing was heard: hands are busy, so long. */
  noInput: 8_000,
  /** The same once the big buttons are up: no nagging. */
  noInputAtButtons: 60_000,
  /** The longest speech is cut at 8 s and decided within the rest. */
  hearing: 12_000,
  /** For understanding and recording what was said. */
  deciding: 5_000,
  /** The longest prompt takes some 20 s; a mouth still silent about its end has lost it. */
  speaking: 45_000,
} as const;

/** Failures in a row after which the big buttons come up. */
export const FAILURES_TO_BUTTONS = 3;

/** Before the first `ask` there is no prompt; this one is never spoken. */
const NO_PROMPT: Prompt = { id: '', mayBeInterrupted: true };

/** What is said after so many failures in a row; from the third on two sentences alternate. */
export function sayingAfter(failures: number, after: Failure): Saying {
  if (failures < 2) return { kind: 'short again', after };
  const isButtonsTurn = failures >= FAILURES_TO_BUTTONS && (failures - FAILURES_TO_BUTTONS) % 2 === 0;
  return { kind: isButtonsTurn ? 'big buttons' : 'what can be said', after };
}

/** The chart, doing what it does through `effects`. */
export function turnsMachine(effects: TurnEffects) {
  return setup({
    types: {
      context: {} as TurnContext,
      events: {} as TurnEvent,
    },
    guards: {
      mayBeInterrupted: ({ context }) => context.prompt.mayBeInterrupted,
      doEarsWork: ({ context }) => context.doEarsWork,
      doesVoiceRest: ({ context }) => context.doesVoiceRest,
      areButtonsUp: ({ context }) => failuresOf(context) >= FAILURES_TO_BUTTONS,
      hasPrompt: ({ context }) => context.prompt !== NO_PROMPT,
    },
    actions: {
      takePrompt: assign(({ event, context }) =>
        event.type === 'ask'
          ? { prompt: event.prompt, saying: { kind: 'prompt' }, nothingHeard: 0, notUnderstood: 0 }
          : context,
      ),
      askAfresh: assign({ saying: { kind: 'prompt' }, nothingHeard: 0, notUnderstood: 0 }),
      countNothingHeard: assign(({ context }) => ({
        nothingHeard: context.nothingHeard + 1,
        saying: sayingAfter(failuresOf(context) + 1, 'nothing heard'),
      })),
      countNotUnderstood: assign(({ context }) => ({
        notUnderstood: context.notUnderstood + 1,
        saying: sayingAfter(failuresOf(context) + 1, 'not understood'),
      })),
      markEarsBroken: assign({ doEarsWork: false }),
      markEarsWorking: assign({ doEarsWork: true }),
      letVoiceRest: assign({ doesVoiceRest: true }),
      letVoiceReturn: assign({ doesVoiceRest: false }),
      prepareEars: ({ context }) => effects.prepareEars(context.prompt),
      shutEars: () => effects.shutEars(false),
      shutEarsButForStop: ({ context }) => effects.shutEars(context.prompt.mayBeInterrupted),
      giveFloor: ({ context }) => {
        if (context.doEarsWork && !context.doesVoiceRest) effects.giveFloor();
      },
      openEars: () => effects.openEars(),
      restEars: () => effects.restEars(),
      speak: ({ context }) => effects.speak(context.prompt, context.saying),
      hush: () => effects.hush(),
      decide: ({ event }) => {
        if (event.type === 'utterance') effects.decide(event.utterance);
      },
      showBigButtons: ({ context }) => effects.showBigButtons(context.prompt),
    },
    delays: {
      echoTail: turnTimesMs.echoTail,
      noInput: ({ context }) =>
        failuresOf(context) >= FAILURES_TO_BUTTONS ? turnTimesMs.noInputAtButtons : turnTimesMs.noInput,
      hearing: turnTimesMs.hearing,
      deciding: turnTimesMs.deciding,
      speaking: turnTimesMs.speaking,
    },
  }).createMachine({
    id: 'turns',
    context: {
      prompt: NO_PROMPT,
      saying: { kind: 'prompt' },
      nothingHeard: 0,
      notUnderstood: 0,
      doEarsWork: true,
      doesVoiceRest: false,
    },
    initial: 'idle',
    on: {
      ask: { target: '.speaking', actions: ['hush', 'takePrompt'] },
      suspend: { target: '.suspended', actions: ['hush', 'shutEars'] },
      'ears.failed': { actions: 'markEarsBroken' },
      'ears.recovered': { actions: 'markEarsWorking' },
      'voice.rests': { actions: 'letVoiceRest' },
      'voice.returns': { actions: 'letVoiceReturn' },
    },
    states: {
      idle: {},

      speaking: {
        // The ears are shut before the first word and made ready behind it.
        entry: ['shutEarsButForStop', 'speak', 'prepareEars'],
        on: {
          'mouth.finished': 'echoTail',
          'stop.heard': { guard: 'mayBeInterrupted', target: 'echoTail', actions: 'hush' },
          'touch.hush': { guard: 'mayBeInterrupted', target: 'echoTail', actions: 'hush' },
          'touch.answered': { guard: 'mayBeInterrupted', target: 'deciding', actions: 'hush' },
        },
        after: { speaking: { target: 'echoTail', actions: 'hush' } },
      },

      echoTail: {
        entry: ['shutEars', 'giveFloor'],
        on: { 'touch.answered': 'deciding' },
        after: {
          echoTail: [
            { guard: not('doEarsWork'), target: 'touchOnly' },
            { guard: 'doesVoiceRest', target: 'resting' },
            { target: 'listening', actions: 'openEars' },
          ],
        },
      },

      /** Entered with the ears open: after a knock they still are, and no tone sounds into them. */
      listening: {
        initial: 'plain',
        on: {
          'speech.started': 'hearing',
          utterance: { target: 'deciding', actions: 'decide' },
          'touch.answered': 'deciding',
          'voice.rests': { target: 'resting', actions: 'letVoiceRest' },
          'ears.failed': { target: 'touchOnly', actions: ['markEarsBroken', 'shutEars'] },
        },
        after: { noInput: { target: 'speaking', actions: 'countNothingHeard' } },
        states: {
          plain: { always: { guard: 'areButtonsUp', target: 'withButtons' } },
          withButtons: { entry: 'showBigButtons' },
        },
      },

      hearing: {
        on: {
          'speech.dropped': 'listening',
          utterance: { target: 'deciding', actions: 'decide' },
          'touch.answered': 'deciding',
          'voice.rests': { target: 'resting', actions: 'letVoiceRest' },
          'ears.failed': { target: 'touchOnly', actions: ['markEarsBroken', 'shutEars'] },
        },
        after: { hearing: { target: 'speaking', actions: 'countNotUnderstood' } },
      },

      deciding: {
        entry: 'shutEars',
        on: { refused: { target: 'speaking', actions: 'countNotUnderstood' } },
        // Nobody decided: better to say that it was not understood than to stand there.
        after: { deciding: { target: 'speaking', actions: 'countNotUnderstood' } },
      },

      touchOnly: {
        entry: 'showBigButtons',
        on: {
          'touch.answered': 'deciding',
          'ears.recovered': { target: 'speaking', actions: ['markEarsWorking', 'askAfresh'] },
        },
      },

      /** Answers come by touch; the ears hear stop words, and whether it grows quieter. Nothing else is answered. */
      resting: {
        entry: ['showBigButtons', 'restEars'],
        on: {
          utterance: { actions: 'decide' },
          'touch.answered': 'deciding',
          'voice.returns': { target: 'speaking', actions: ['letVoiceReturn', 'askAfresh'] },
          'ears.failed': { target: 'touchOnly', actions: ['markEarsBroken', 'shutEars'] },
        },
      },

      suspended: {
        on: {
          // Asked while nobody hears it: kept for later.
          ask: { actions: 'takePrompt' },
          resume: [{ guard: 'hasPrompt', target: 'speaking', actions: 'askAfresh' }, { target: 'idle' }],
        },
      },
    },
  });
}

function failuresOf(context: TurnContext): number {
  return context.nothingHeard + context.notUnderstood;
}
