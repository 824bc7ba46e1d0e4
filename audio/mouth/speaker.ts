import type { Say } from '../../grammar/say.ts';
import { clipLibrary } from './clip-library.ts';
import { type Earcon, playEarcon } from './earcons.ts';
import { recordedVoice } from './recorded-voice.ts';
import { bufferOf } from './sample-buffer.ts';
import { systemVoice } from './system-voice.ts';
import type { SpeechTrouble, Utterance, Voice } from './voice.ts';
import type { VoiceFiles } from './voice-files.ts';

/** The mouth as the app uses it. */
export interface Speaker extends Voice {
  earcon(earcon: Earcon): Promise<void>;
  /** @param volume 0 to 1; holds from the next sound on, and at once for the recorded voice */
  setVolume(volume: number): void;
  /** @param pace how much faster than usual, 0.5 to 2, at the same pitch; holds from the next thing said on */
  setPace(pace: number): void;
  /** Lets a voice of the tablet's own speak, or with undefined the recorded one again. */
  useSystemVoice(voice: SpeechSynthesisVoice | undefined): void;
}

export interface SpeakerParts {
  readonly context: AudioContext;
  readonly files: VoiceFiles;
  /** Told of everything that was not said as it should have been. */
  readonly onTrouble: (trouble: SpeechTrouble) => void;
  /** The tablet's speech synthesis; left out, only the recorded voice speaks. */
  readonly synthesis?: SpeechSynthesis;
  /** Where the sound goes; the loudspeaker if left out. */
  readonly output?: AudioNode;
}

/**
 * Puts the mouth together. The recorded voice speaks unless a voice of the tablet has been chosen; if that one fails,
 * the failure is reported and the recorded voice says the same at once.
 */
export function speaker({ context, files, onTrouble, synthesis, output }: SpeakerParts): Speaker {
  const volume = context.createGain();
  volume.connect(output ?? context.destination);
  let pace = 1;
  const library = clipLibrary(
    files.index,
    files.readPack,
    (mp3) => context.decodeAudioData(mp3),
    (samples, sampleRateHz) => bufferOf(context, samples, sampleRateHz),
  );
  const recorded = recordedVoice(context, volume, library, () => pace, onTrouble);
  let system: Voice | undefined;
  let cutCurrent = () => {};
  return {
    speak(say) {
      cutCurrent();
      const utterance =
        system === undefined ? recorded.speak(say) : withStandIn(system.speak(say), recorded, say);
      cutCurrent = utterance.cut;
      return utterance;
    },
    prepare: (says) => (system ?? recorded).prepare(says),
    earcon: (earcon) => playEarcon(context, volume, earcon),
    setVolume(value) {
      volume.gain.value = Math.min(1, Math.max(0, value));
    },
    setPace(value) {
      pace = Math.min(2, Math.max(0.5, value));
    },
    useSystemVoice(voice) {
      cutCurrent();
      if (voice === undefined) {
        system = undefined;
        return;
      }
      if (synthesis === undefined) throw new Error('This tablet has no voice of its own.');
      system = systemVoice(
        synthesis,
        voice,
        () => volume.gain.value,
        () => pace,
        onTrouble,
      );
    },
  };
}

/** An utterance that a second voice says if the first one fails. */
function withStandIn(first: Utterance, second: Voice, say: Say): Utterance {
  let current = first;
  let wasCut = false;
  const stoodIn = first.finished.then((how) => {
    if (how === 'failed' && !wasCut) current = second.speak(say);
    return current;
  });
  return {
    started: first.started.then((at) => (at === 'never' ? stoodIn.then((last) => last.started) : at)),
    finished: stoodIn.then((last) => last.finished),
    cut() {
      wasCut = true;
      current.cut();
    },
  };
}
