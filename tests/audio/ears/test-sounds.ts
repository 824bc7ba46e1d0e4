import { EARS_RATE_HZ } from '../../../audio/ears/sound-format.ts';

/** Sounds for the tests, always the same. */

/** A uniform random number generator with a seed (Numerical Recipes' quick one). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Gaussian white noise of the given root mean square (Box-Muller). */
export function whiteNoise(samples: number, rms: number, seed = 1): Float32Array {
  const random = seeded(seed);
  return Float32Array.from(
    { length: samples },
    () => rms * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
  );
}

/** A sine. @param amplitude its peak */
export function sine(
  samples: number,
  hz: number,
  rateHz: number = EARS_RATE_HZ,
  amplitude = 1,
): Float32Array {
  return Float32Array.from(
    { length: samples },
    (_, i) => amplitude * Math.sin((2 * Math.PI * hz * i) / rateHz),
  );
}

/**
 * Something with the marks of a voice: a 120 Hz buzz with three formants, four syllables a second, of the given root mean
 * square while it lasts.
 */
export function voiceLike(ms: number, rms: number): Float32Array {
  const samples = Math.round((ms * EARS_RATE_HZ) / 1000);
  const out = new Float32Array(samples);
  for (let i = 0; i < samples; i += 1) {
    const t = i / EARS_RATE_HZ;
    let sum = 0;
    for (let harmonic = 1; harmonic * 120 < 5_000; harmonic += 1) {
      const hz = 120 * harmonic * (1 + 0.02 * Math.sin(2 * Math.PI * 3 * t));
      const strength = [600, 1_200, 2_500].reduce(
        (most, peak) => Math.max(most, 1 / (1 + ((hz - peak) / 150) ** 2)),
        0.02,
      );
      sum += strength * Math.sin(2 * Math.PI * hz * t + harmonic * harmonic);
    }
    out[i] = sum * (0.55 - 0.45 * Math.cos(2 * Math.PI * 4 * t));
  }
  return scaledTo(out, rms);
}

/** The sound made this loud. */
export function scaledTo(sound: Float32Array, rms: number): Float32Array {
  const now = Math.sqrt(sound.reduce((sum, sample) => sum + sample * sample, 0) / sound.length);
  return sound.map((sample) => (sample * rms) / now);
}

/** The base with the sound added from a sample on. */
export function mixedAt(base: Float32Array, sound: Float32Array, at: number): Float32Array {
  const out = base.slice();
  for (let i = 0; i < sound.length && at + i < out.length; i += 1) {
    out[at + i] = (out[at + i] as number) + (sound[i] as number);
  }
  return out;
}

/** Cuts a sound into blocks of one length; the last may be shorter. */
export function blocksOf(sound: Float32Array, length: number): Float32Array[] {
  return Array.from({ length: Math.ceil(sound.length / length) }, (_, i) =>
    sound.subarray(i * length, (i + 1) * length),
  );
}
