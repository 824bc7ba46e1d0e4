import { type ReadonlySignal, signal } from '@preact/signals';
import type { Listener } from '../../audio/ears/listener.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import type { Speaker } from '../../audio/mouth/speaker.ts';
import { ASIDE_LINES } from '../../flows/asides.ts';
import { type MeaningId, phrasesFor, taughtForm } from '../../grammar/lexicon.ts';
import { type Mouth, openMouth } from '../session/mouth.ts';

/** Said back to the app on the first run: a confirmation, a way on, and the word that matters most. */
export const CHECKED_PHRASES = ['yes', 'carryOn', 'stop'] as const satisfies readonly MeaningId[];

/** A phrase that was not heard by then counts as not heard, milliseconds. */
const WAIT_MS = 9_000;

export type HearingCheck =
  | { readonly kind: 'idle' }
  /** @property share of the speech model on this tablet, 0 to 1 */
  | { readonly kind: 'starting'; readonly share: number }
  /** The phrase to say, whether the voice has said it and waits, and how the ones before went. */
  | {
      readonly kind: 'saying';
      readonly phrase: string;
      readonly isYourTurn: boolean;
      readonly heard: readonly boolean[];
    }
  | { readonly kind: 'done'; readonly heard: readonly boolean[] }
  /** One sentence that says what is wrong and what still works. */
  | { readonly kind: 'failed'; readonly sentence: string };

export interface HearingChecker {
  readonly state: ReadonlySignal<HearingCheck>;
  /** Asks for the microphone; must be called from a tap. */
  start(): Promise<void>;
  /** Closes microphone and loudspeaker. */
  stop(): void;
}

/**
 * Plays the voice and listens for three phrases with the microphone and the recogniser of a job.
 * @param dress sets voice and loudness as they were chosen
 * @param fieldModel the field model, where it is chosen to listen
 */
export function hearingChecker(
  dress: (speaker: Speaker) => void,
  fieldModel: () => PackedFieldModel | undefined,
): HearingChecker {
  const state = signal<HearingCheck>({ kind: 'idle' });
  let ears: Listener | undefined;
  let mouth: Mouth | undefined;
  let run = 0;

  const stop = () => {
    run += 1;
    ears?.stop();
    mouth?.close();
    ears = undefined;
    mouth = undefined;
  };
  const fail = (sentence: string) => {
    stop();
    state.value = { kind: 'failed', sentence };
  };

  async function start(): Promise<void> {
    stop();
    const mine = run;
    state.value = { kind: 'starting', share: 0 };
    try {
      // The mouth first and without waiting: sound has to be asked for while the tap still counts.
      const [opened, hearing] = await Promise.all([
        openMouth(({ message }) => fail(message)),
        import('../session/hearing.ts'),
      ]);
      if (mine !== run) return opened.close();
      mouth = opened;
      dress(opened.speaker);
      const listener = hearing.openEars(fieldModel());
      ears = listener;
      listener.subscribe((event) => {
        if (event.type === 'model.progress') {
          state.value = { kind: 'starting', share: event.gotBytes / event.wantedBytes };
        } else if (event.type === 'failed') fail(hearing.describeFailure(event.failure));
      });
      const started = await listener.start();
      if (mine !== run) return;
      if (!started.ok) return fail(hearing.describeFailure(started.failure));
      listener.listenFor(hearing.recogniserList({ meanings: CHECKED_PHRASES }), { canGoOn: false });
      const heard: boolean[] = [];
      for (const meaning of CHECKED_PHRASES) {
        const phrase = taughtForm(meaning);
        state.value = { kind: 'saying', phrase, isYourTurn: false, heard: [...heard] };
        listener.shut();
        await opened.speaker.speak([ASIDE_LINES.youCanSay, phrase]).finished;
        if (mine !== run) return;
        await opened.speaker.earcon('listening');
        if (mine !== run) return;
        listener.open();
        state.value = { kind: 'saying', phrase, isYourTurn: true, heard: [...heard] };
        heard.push(await hears(listener, meaning));
        if (mine !== run) return;
      }
      stop();
      state.value = { kind: 'done', heard };
    } catch (error) {
      if (mine === run) fail(`${error instanceof Error ? error.message : String(error)} Touch still works.`);
    }
  }

  return { state, start, stop };
}

/** Whether the next thing said is a phrase of the meaning. */
function hears(listener: Listener, meaning: MeaningId): Promise<boolean> {
  return new Promise((resolve) => {
    const settle = (wasHeard: boolean) => {
      clearTimeout(timer);
      unsubscribe();
      resolve(wasHeard);
    };
    const timer = setTimeout(() => settle(false), WAIT_MS);
    const unsubscribe = listener.subscribe((event) => {
      if (event.type !== 'utterance' || event.utterance.text === '') return;
      settle(isPhraseOf(event.utterance.text, meaning));
    });
  });
}

/** Whether words as the recogniser gives them are one way of saying a meaning. */
export function isPhraseOf(text: string, meaning: MeaningId): boolean {
  const words = text.replaceAll('_', ' ').trim();
  return phrasesFor(meaning).some((phrase) => phrase.words === words);
}
