/**
 * Makes an utterance ready for the command model: the noise taken out, its long-term spectrum brought to the one that
 * the model expects, a little of the cleaned room left on both sides.
 *
 * The model has no mean normalisation of its own. Kaldi's online one follows whatever comes, so that after some seconds
 * of waiting it is tuned to the room and hears the room as speech; here the mean is of the utterance alone, as in
 * the training of the acoustic model, and a recogniser is never cold.
 */
import { addDither } from '../../ears/dither.ts';
import { msToSamples } from '../../ears/sound-format.ts';
import { NoiseTracker } from './noise-tracker.ts';
import {
  addSpectrum,
  applyGains,
  bandPowersOf,
  frameSamples,
  hopSamples,
  type Spectrum,
  spectrumAt,
} from './spectral-frames.ts';
import { equaliserFor, meanCepstra } from './utterance-mean.ts';

/**
 * Sound left on each side of the speech, milliseconds: room for a detector's error and for the model's silence. With 450, phrases
 * beside an impact wrench are 31 right of 40 and 4 wrong, with 250 they are 35 and 3; elsewhere it makes no difference but to
 * the time that decoding takes.
 */
export const padMs = 250;

/** Keeps logarithms finite where a band is empty; the dither is far above it. */
const leastPower = 1e-3;

export interface PreparedUtterance {
  /** 16 kHz; what the recogniser is to be given, all of it. */
  readonly samples: Float32Array;
  /** Where the speech lies in it, milliseconds: what is heard outside is not of this utterance. */
  readonly speechStartMs: number;
  readonly speechEndMs: number;
  /** The speech's mean cepstra: how this voice, microphone and distance sound. */
  readonly mean: Float64Array;
  /** How far the speech stands over the room before it, decibels in the model's bands; Infinity when no room is known. */
  readonly speechOverRoomDb: number;
}

/**
 * @param raw 16 kHz mono, -1 to 1: a second or more of the room (three are better), the speech, and what came after
 * @param start first sample of the speech in `raw`
 * @param end the sample behind its last
 * @throws RangeError when there is no speech between them
 */
export function prepareUtterance(raw: Float32Array, start: number, end: number): PreparedUtterance {
  if (!(start >= 0 && end <= raw.length && end - start >= frameSamples)) {
    throw new RangeError(`No speech lies between samples ${start} and ${end} of ${raw.length}.`);
  }
  const from = Math.max(0, start - msToSamples(padMs));
  const to = Math.min(raw.length, end + msToSamples(padMs));
  const tracker = new NoiseTracker();
  const kept: { readonly spectrum: Spectrum; readonly at: number }[] = [];
  const speech: Float64Array[] = [];
  const [inRoom, inSpeech] = [new MeanPower(), new MeanPower()];
  for (let at = 0; at + frameSamples <= to; at += hopSamples) {
    const spectrum = spectrumAt(raw, at);
    const powers = bandPowersOf(spectrum);
    if (at + frameSamples <= from) inRoom.add(powers);
    const logGains = tracker.next(powers).map(Math.log);
    if (at + frameSamples <= from) continue;
    applyGains(spectrum, logGains);
    kept.push({ spectrum, at });
    const middle = at + frameSamples / 2;
    if (middle >= start && middle < end) {
      inSpeech.add(powers);
      speech.push(powers.map((power, band) => Math.log(power + leastPower) + (logGains[band] as number)));
    }
  }
  const mean = meanCepstra(speech);
  const equaliser = equaliserFor(mean);
  const samples = new Float32Array(to - from);
  for (const { spectrum, at } of kept) {
    applyGains(spectrum, equaliser);
    addSpectrum(spectrum, samples, at - from);
  }
  // Digital silence has no logarithm. The same dither every time, so that the same sound is always heard the same.
  addDither(samples, steadyRandom());
  const toMs = (sample: number) => ((sample - from) * 10) / hopSamples;
  return {
    samples,
    speechStartMs: toMs(start),
    speechEndMs: toMs(end),
    mean,
    speechOverRoomDb: 10 * Math.log10(inSpeech.mean / inRoom.mean),
  };
}

/** Mean power of frames over all bands. */
class MeanPower {
  private sum = 0;
  private frames = 0;

  add(bands: Float64Array): void {
    this.sum += bands.reduce((total, power) => total + power, 0);
    this.frames++;
  }

  /** 0 before the first frame. */
  get mean(): number {
    return this.sum / Math.max(1, this.frames);
  }
}

/** Uniform in [0, 1), the same numbers every time. Source of the constants: the example of ISO C, 7.22.2. */
function steadyRandom(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return state / 2 ** 32;
  };
}
