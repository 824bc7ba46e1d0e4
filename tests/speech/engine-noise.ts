/** Seeded noise: a diesel at idle (harmonics of its firing rate that hunt and beat) over pink noise; or pink alone. */

/** Uniform numbers from 0 to 1; the same seed gives the same numbers. Source: Mulberry32, T. Ettinger, 2017. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

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
  return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length));
}

/** Harmonics and pink noise of equal power; overall root mean square 1. */
export function engineNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const firingHz = 24 + 8 * random(); // four cylinders, four strokes, 720 to 960 turns a minute
  const harmonics = Array.from({ length: 60 }, (_, i) => ({
    multiple: (i + 1) / 2, // half orders: cylinders are not alike
    gain: (i % 2 === 1 ? 1 : 0.4) / (1 + i / 8) / (0.5 + random()),
    phase: 2 * Math.PI * random(),
  }));
  const out = new Float32Array(samples);
  let turn = 0;
  let hunting = 0;
  for (let i = 0; i < samples; i++) {
    hunting = 0.9999 * hunting + 0.0006 * (random() - 0.5);
    turn += (2 * Math.PI * firingHz * (1 + hunting)) / sampleRate;
    let sum = 0;
    for (const { multiple, gain, phase } of harmonics) sum += gain * Math.sin(multiple * turn + phase);
    out[i] = sum;
  }
  const pink = pinkNoise(samples, random);
  const [engineLevel, pinkLevel] = [rms(out), rms(pink)];
  const mixed = out.map((sample, i) => sample / engineLevel + (pink[i] ?? 0) / pinkLevel);
  const level = rms(mixed);
  return mixed.map((sample) => sample / level);
}
