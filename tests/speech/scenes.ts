/** Continuous sound as a microphone hears it: the room for some seconds, a phrase in it, the room again. */
import { engineNoise, pinkNoise, rms, seededRandom } from './engine-noise.ts';
import { sampleRate } from './voices.ts';

export interface Room {
  readonly noise: 'engine' | 'pink';
  /** Level of the speech over the noise in decibels, over the whole band. */
  readonly snrDb: number;
}

/** A quiet room: even the best microphone has a floor. */
export const quietRoom: Room = { noise: 'pink', snrDb: 40 };

export interface Scene {
  readonly samples: Float32Array;
  /** Where the speech is, in samples. */
  readonly start: number;
  readonly end: number;
}

const leadInSeconds = 4;
const trailSeconds = 1.5;
/** Root mean square of the speech: some 20 dB under full scale, so that peaks stay inside. */
const speechLevel = 0.08;

export function makeScene(speech: Float32Array, room: Room, seed: number): Scene {
  const random = seededRandom(seed);
  const start = Math.round((leadInSeconds + 0.5 * random()) * sampleRate);
  const total = start + speech.length + trailSeconds * sampleRate;
  const noise = room.noise === 'engine' ? engineNoise(total, sampleRate, random) : pinkNoise(total, random);
  const noiseGain = (speechLevel * 10 ** (-room.snrDb / 20)) / rms(noise);
  const speechGain = speechLevel / rms(speech);
  const samples = noise.map((sample) => sample * noiseGain);
  speech.forEach((sample, i) => {
    samples[start + i] = (samples[start + i] ?? 0) + sample * speechGain;
  });
  return { samples, start, end: start + speech.length };
}
