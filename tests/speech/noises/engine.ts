/** A diesel at idle: harmonics of its firing rate that hunt and beat, over pink noise. */
import { atUnitLevel, mixed, pinkNoise } from './basics.ts';

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
  return atUnitLevel(mixed([out, 1], [pinkNoise(samples, random), 1]));
}
