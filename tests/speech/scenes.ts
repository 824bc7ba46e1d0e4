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

/** @param bringsRoom the speech was recorded in a room that was there before and goes on after it */
export function makeScene(speech: Float32Array, room: Room, seed: number, bringsRoom = false): Scene {
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
  if (bringsRoom) {
    const own = goneOn(quietest(speech), total, random);
    for (let i = 0; i < total; i++) {
      if (i < start || i >= start + speech.length)
        samples[i] = (samples[i] as number) + speechGain * (own[i] as number);
    }
  }
  return { samples, start, end: start + speech.length };
}

const quietSeconds = 0.1;

/** The quietest stretch of a recording: its room without the voice, as far as there is any. */
function quietest(sound: Float32Array): Float32Array {
  const length = Math.min(sound.length, quietSeconds * sampleRate);
  const step = sampleRate / 100;
  const stretches = Array.from({ length: Math.floor((sound.length - length) / step) + 1 }, (_, i) =>
    sound.subarray(i * step, i * step + length),
  );
  return stretches.reduce((best, each) => (rms(each) < rms(best) ? each : best));
}

const grainSamples = 0.04 * sampleRate;

/** A short noise made long: grains of it from moments by chance, each faded into the next, so that no period is heard. */
function goneOn(noise: Float32Array, samples: number, random: () => number): Float32Array {
  const out = new Float32Array(samples);
  for (let at = 0; at < samples; at += grainSamples / 2) {
    const from = Math.floor(random() * (noise.length - grainSamples));
    for (let i = 0; i < grainSamples && at + i < samples; i++) {
      // Two grains that do not resemble each other add their powers: the squares of the fades add up to one.
      const fade = Math.sin((Math.PI * i) / grainSamples);
      out[at + i] = (out[at + i] as number) + fade * (noise[from + i] as number);
    }
  }
  return out;
}

const longNoises = new Map<NoiseName, Float32Array>();
const longNoiseSeconds = 75;

/** A stretch of a long noise from a moment by chance: making each anew takes longer than decoding does. */
export function noiseFrom(name: NoiseName, samples: number, random: () => number): Float32Array {
  const long =
    longNoises.get(name) ??
    noises[name].make(longNoiseSeconds * sampleRate, sampleRate, seededRandom(fnv1a(name)));
  longNoises.set(name, long);
  const at = Math.floor(random() * (long.length - samples));
  return long.subarray(at, at + samples);
}
