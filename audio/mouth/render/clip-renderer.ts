import { createHash } from 'node:crypto';
import { endsSentence } from '../joining.ts';
import { startMp3Encoder } from './mp3-encoder.ts';
import { respelled } from './respellings.ts';
import { shaped } from './shaped.ts';
import { startSynthesiser } from './synthesiser.ts';
import { VOICE_SETTINGS } from './voice-settings.ts';

/** One fragment, spoken. */
export interface Clip {
  readonly text: string;
  /** Digest of what was spoken and how, twelve hexadecimal digits. */
  readonly key: string;
  readonly mp3: Uint8Array;
  /** How long the speech lasts, milliseconds. */
  readonly speechMs: number;
}

/** Makes clips. The same text gives the same bytes, on any machine and in any order. */
export interface ClipRenderer {
  /** The key the clip of a text would carry, without making it. */
  keyOf(text: string): string;
  /** @throws Error where nothing audible comes of the text */
  render(text: string): Promise<Clip>;
}

/** Starts the synthesiser and the encoder; some tenths of a second. */
export async function startClipRenderer(): Promise<ClipRenderer> {
  const settings = VOICE_SETTINGS;
  const [sentences, pieces, encoder] = await Promise.all([
    startSynthesiser(settings.voice, settings.sentenceStretch),
    startSynthesiser(settings.voice, settings.pieceStretch),
    startMp3Encoder(settings.sampleRateHz, settings.bitrateKbps),
  ]);
  const programs = [sentences.program, encoder.program].map((program) => digest(program));
  const keyOf = (text: string) =>
    digest(JSON.stringify([settings, programs, endsSentence(text), respelled(text)]));
  return {
    keyOf,
    async render(text) {
      const spoken = await (endsSentence(text) ? sentences : pieces).speak(respelled(text));
      if (spoken.sampleRateHz !== settings.sampleRateHz) {
        throw new Error(`The voice speaks at ${spoken.sampleRateHz} Hz, not at ${settings.sampleRateHz} Hz.`);
      }
      const speech = shaped(spoken.samples, settings);
      if (speech === undefined) throw new Error(`Nothing audible comes of "${text}".`);
      return {
        text,
        key: keyOf(text),
        mp3: encoder.encode(padded(speech, Math.round(settings.paddingS * settings.sampleRateHz))),
        speechMs: Math.round((1000 * speech.length) / settings.sampleRateHz),
      };
    },
  };
}

function padded(samples: Float32Array, padding: number): Float32Array {
  const all = new Float32Array(samples.length + 2 * padding);
  all.set(samples, padding);
  return all;
}

function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 12);
}
