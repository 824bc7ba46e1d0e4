/** Continuous sound as a microphone hears it: the room for some seconds, a phrase in it, the room again. */

import { fnv1a, seededRandom } from '../../flows/drill/seeded.ts';
import { inShed, type ShedName, sheds } from './echo.ts';
import { rms } from './noises/basics.ts';
import { type NoiseName, noises } from './noises/noises.ts';
import { sampleRate } from './speak.ts';

export interface Room {
  readonly noise: NoiseName;
  /** Level of the speech over the noise in decibels, over the whole band. */
  readonly snrDb: number;
  /** Under a roof; in the open where it is missing. */
  readonly shed?: ShedName;
}

/** A quiet room: even the best microphone has a floor. */
export const quietRoom: Room = { noise: 'pink', snrDb: 40 };

export interface Scene {
  readonly samples: Float32Array;
  /** Where the speech is, in samples; its echo not counted. */
  readonly start: number;
  readonly end: number;
}

const leadInSeconds = 4;
const trailSeconds = 1.8;
/** Root mean square of the speech: some 20 dB under full scale, so that peaks stay inside. */
export const speechLevel = 0.08;

export function makeScene(speech: Float32Array, room: Room, seed: number): Scene {
  const random = seededRandom(seed);
  const start = Math.round((leadInSeconds + 0.5 * random()) * sampleRate);
  const total = start + speech.length + trailSeconds * sampleRate;
  const noise = noiseFrom(room.noise, total, random);
  const noiseGain = (speechLevel * 10 ** (-room.snrDb / 20)) / rms(noise);
  const heard = room.shed ? inShed(speech, sheds[room.shed], sampleRate, random) : speech;
  const speechGain = speechLevel / rms(heard.subarray(0, speech.length));
  const samples = noise.map((sample) => sample * noiseGain);
  for (let i = 0; i < heard.length && start + i < total; i++) {
    samples[start + i] = (samples[start + i] as number) + (heard[i] as number) * speechGain;
  }
  return { samples, start, end: start + speech.length };
}

const longNoises = new Map<NoiseName, Float32Array>();
const longNoiseSeconds = 120;

/** A stretch of a long noise from a moment by chance: making each anew takes longer than decoding does. */
export function noiseFrom(name: NoiseName, samples: number, random: () => number): Float32Array {
  const long =
    longNoises.get(name) ??
    noises[name].make(longNoiseSeconds * sampleRate, sampleRate, seededRandom(fnv1a(name)));
  longNoises.set(name, long);
  const at = Math.floor(random() * (long.length - samples));
  return long.subarray(at, at + samples);
}
