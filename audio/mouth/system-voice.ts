import { sayText } from '../../grammar/say.ts';
import { utteranceState } from './utterance-state.ts';
import type { SpeechTrouble, Voice } from './voice.ts';

/** A voice that has not begun by then will not, milliseconds: some tablets drop an utterance without a word. */
const START_WAIT_MS = 4000;
/** A touch slower than the voice's own pace: it is followed in noise, hands busy. */
const USUAL_RATE = 0.95;

/** English voices that live on the tablet. One that needs a network would send what is said away, and fail offline. */
export function localVoices(synthesis: Pick<SpeechSynthesis, 'getVoices'>): readonly SpeechSynthesisVoice[] {
  return synthesis
    .getVoices()
    .filter(({ localService, lang }) => localService === true && /^en\b/i.test(lang.replace('_', '-')));
}

/**
 * A voice of the tablet's own.
 * @param voice one of {@link localVoices}
 * @param pace how much faster than usual, asked anew for every Say
 * @throws RangeError for a voice that needs a network
 */
export function systemVoice(
  synthesis: SpeechSynthesis,
  voice: SpeechSynthesisVoice,
  volume: () => number,
  pace: () => number,
  onTrouble: (trouble: SpeechTrouble) => void,
): Voice {
  if (voice.localService !== true) throw new RangeError(`The voice ${voice.name} does not work offline.`);
  let cutCurrent = () => {};
  return {
    speak(say) {
      cutCurrent();
      const spoken = new SpeechSynthesisUtterance(sayText(say));
      let beginTimer: ReturnType<typeof setTimeout> | undefined;
      const state = utteranceState((how) => {
        clearTimeout(beginTimer);
        if (how !== 'done') synthesis.cancel();
      });
      const fail = (why: string) => {
        if (state.over()) return;
        state.end('failed');
        onTrouble({
          kind: 'systemVoiceFailed',
          say,
          message: `The tablet's voice ${voice.name} failed: ${why}`,
        });
      };
      spoken.voice = voice;
      spoken.lang = voice.lang;
      spoken.rate = USUAL_RATE * pace();
      spoken.volume = volume();
      spoken.addEventListener('start', () => {
        clearTimeout(beginTimer);
        state.start(performance.now());
      });
      spoken.addEventListener('end', () => state.end('done'));
      spoken.addEventListener('error', ({ error }) => fail(`${error}.`));
      beginTimer = setTimeout(() => fail('it did not begin to speak.'), START_WAIT_MS);
      cutCurrent = state.utterance.cut;
      synthesis.speak(spoken);
      return state.utterance;
    },
    // The system makes its speech as it goes; there is nothing to fetch ahead.
    prepare() {},
  };
}
