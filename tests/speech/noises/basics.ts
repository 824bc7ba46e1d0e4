/** What the noises are made of. */

/** Pink within a decibel from 40 Hz up. Source: P. Kellet's refined filter, music-dsp list, 1999. */
export function pinkNoise(samples: number, random: () => number): Float32Array {
  const poles = [0.99886, 0.99332, 0.969, 0.8665, 0.55, -0.7616];
  const gains = [0.0555179, 0.0750759, 0.153852, 0.3104856, 0.5329522, -0.016898];
  const state = poles.map(() => 0);
  let last = 0;
  return Float32Array.from({ length: samples }, () => {
    const white = 2 * random() - 1;
    let sum = last + 0.5362 * white;
    poles.forEach((pole, i) => {
      const next = pole * (state[i] ?? 0) + (gains[i] ?? 0) * white;
      state[i] = next;
      sum += next;
    });
    last = 0.115926 * white;
    return sum;
  });
}

export function rms(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return Math.sqrt(sum / Math.max(1, samples.length));
}

/** The same sound at a root mean square of 1. */
export function atUnitLevel(samples: Float32Array): Float32Array {
  const level = rms(samples);
  return samples.map((sample) => sample / level);
}

/** Sounds added up, each brought to its share of the root mean square first; all as long as the first. */
export function mixed(...parts: readonly (readonly [sound: Float32Array, gain: number])[]): Float32Array {
  const out = new Float32Array(parts[0]?.[0].length ?? 0);
  for (const [sound, gain] of parts) {
    const scale = gain / Math.max(1e-9, rms(sound));
    for (let i = 0; i < out.length; i++) out[i] = (out[i] as number) + scale * (sound[i] ?? 0);
  }
  return out;
}

/** Uniform noise between -1 and 1, flat over the whole band. */
export function whiteNoise(samples: number, random: () => number): Float32Array {
  return Float32Array.from({ length: samples }, () => 2 * random() - 1);
}

/** A second-order filter. Source: R. Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter coefficients". */
export function filtered(
  samples: Float32Array,
  kind: 'low' | 'high' | 'band',
  hz: number,
  sampleRate: number,
  q = Math.SQRT1_2,
): Float32Array {
  const w = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(w) / (2 * q);
  const cos = Math.cos(w);
  const [b0, b1, b2] =
    kind === 'low'
      ? [(1 - cos) / 2, 1 - cos, (1 - cos) / 2]
      : kind === 'high'
        ? [(1 + cos) / 2, -(1 + cos), (1 + cos) / 2]
        : [alpha, 0, -alpha];
  const [a0, a1, a2] = [1 + alpha, -2 * cos, 1 - alpha];
  const out = new Float32Array(samples.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i] as number;
    const y = (b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2) / a0;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    out[i] = y;
  }
  return out;
}
