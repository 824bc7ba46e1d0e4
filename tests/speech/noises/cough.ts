/** Coughs and cleared throats: bursts of breath through a throat, two or three in a row. */
import { filtered, whiteNoise } from './basics.ts';

/** A fit of coughs every few seconds, peaks near 1; the quiet between them is empty. */
export function coughs(samples: number, sampleRate: number, random: () => number): Float32Array {
  const out = new Float32Array(samples);
  for (let at = Math.round(2 * sampleRate * random()); at < samples; ) {
    const bursts = 1 + Math.floor(3 * random());
    for (let burst = 0; burst < bursts && at < samples; burst++) {
      const length = Math.round(sampleRate * (0.18 + 0.2 * random()));
      const breath = whiteNoise(length, random);
      // Resonances of an open throat, and a voice that grates at the start.
      const throat = [550 + 150 * random(), 1400 + 300 * random(), 2700 + 400 * random()].map((hz) =>
        filtered(breath, 'band', hz, sampleRate, 5),
      );
      const gratingHz = 90 + 60 * random();
      for (let i = 0; i < length && at + i < samples; i++) {
        const t = i / sampleRate;
        const rise = Math.min(1, i / (0.01 * sampleRate)) * Math.exp(-t / 0.09);
        const grating = 1 + 0.8 * Math.sin(2 * Math.PI * gratingHz * t) * Math.exp(-t / 0.05);
        const sum = throat.reduce((total, each, formant) => total + (each[i] as number) / (1 + formant), 0);
        out[at + i] = (out[at + i] as number) + rise * grating * sum;
      }
      at += length + Math.round(sampleRate * 0.1 * random());
    }
    at += Math.round(sampleRate * (1.5 + 3 * random()));
  }
  return out;
}
