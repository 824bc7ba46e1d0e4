/** A page with nothing but the mouth, for the browser tests to drive; it keeps every sample sent to the loudspeaker. */
import { type Speaker, speaker } from '../../../audio/mouth/speaker.ts';
import { localVoices } from '../../../audio/mouth/system-voice.ts';
import type { SpeechTrouble } from '../../../audio/mouth/voice.ts';
import { openVoiceFiles } from '../../../audio/mouth/voice-files.ts';
import type { Say } from '../../../grammar/say.ts';

/** Passes its input on and keeps a copy of it, silence too. */
const TAP = `
  registerProcessor('tap', class extends AudioWorkletProcessor {
    process([[input]], [[output]]) {
      const samples = input ? input.slice() : new Float32Array(128);
      output.set(samples);
      this.port.postMessage(samples);
      return true;
    }
  });
`;

/** @param sampleRateHz of the audio context; the tablet's own if left out */
async function openMouth(sampleRateHz?: number) {
  const context = new AudioContext(sampleRateHz === undefined ? {} : { sampleRate: sampleRateHz });
  const troubles: SpeechTrouble[] = [];
  const blocks: Float32Array[] = [];
  // On the audio thread, so that a busy page loses no block.
  await context.audioWorklet.addModule(URL.createObjectURL(new Blob([TAP], { type: 'text/javascript' })));
  const tap = new AudioWorkletNode(context, 'tap', { channelCount: 1, channelCountMode: 'explicit' });
  tap.port.addEventListener('message', ({ data }: MessageEvent<Float32Array>) => blocks.push(data));
  tap.port.start();
  tap.connect(context.destination);
  const files = await openVoiceFiles(new URL('./voice/', location.href));
  const mouth: Speaker = speaker({
    context,
    files,
    output: tap,
    synthesis: speechSynthesis,
    onTrouble: (trouble) => troubles.push(trouble),
  });
  return {
    context,
    mouth,
    troubles,
    /** Milliseconds from asking to the first sound; the rest is not waited for. */
    async firstSoundMs(say: Say): Promise<number> {
      const askedAt = performance.now();
      const utterance = mouth.speak(say);
      const started = await utterance.started;
      utterance.cut();
      await utterance.finished;
      return started === 'never' ? Number.NaN : started - askedAt;
    },
    /** All samples since, after the tap has had time for its last block. */
    async heard(): Promise<number[]> {
      await new Promise((resolve) => setTimeout(resolve, 150));
      return blocks.flatMap((block) => [...block]);
    },
  };
}

const mouthPage = { openMouth, localVoiceNames: () => localVoices(speechSynthesis).map(({ name }) => name) };

export type MouthPage = typeof mouthPage;

Object.assign(window, { mouthPage });
