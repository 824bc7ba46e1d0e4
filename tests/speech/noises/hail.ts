/** Hail on a shed's sheet roof: strikes at random moments, each a click that rings in the sheet. */
import { atUnitLevel, mixed, pinkNoise } from './basics.ts';

const strikesPerSecond = 220;

/** Root mean square 1. Strikes come as a Poisson process. */
export function hailNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const strikes = new Float32Array(samples);
  for (let at = 0; ; ) {
    at += (-Math.log(1 - random()) * sampleRate) / strikesPerSecond;
    if (at >= samples) break;
    const ringHz = 500 + 3500 * random();
    const decay = sampleRate * (0.002 + 0.01 * random());
    const loud = random() ** 3;
    const first = Math.floor(at);
    const length = Math.min(Math.round(6 * decay), samples - first);
    for (let i = 0; i < length; i++) {
      const ring = Math.exp(-i / decay) * Math.sin((2 * Math.PI * ringHz * i) / sampleRate);
      strikes[first + i] = (strikes[first + i] as number) + loud * ring;
    }
  }
  return atUnitLevel(mixed([strikes, 1], [pinkNoise(samples, random), 0.4]));
}
