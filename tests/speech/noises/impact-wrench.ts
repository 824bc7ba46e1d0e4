/** An impact wrench on and off beside an air line that leaks: bursts of hammering over a hiss. */
import { atUnitLevel, filtered, mixed, whiteNoise } from './basics.ts';

/** Root mean square 1. Bursts of half a second to two seconds, quiet as long between them. */
export function impactWrenchNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const blows = new Float32Array(samples);
  const metal = filtered(whiteNoise(samples, random), 'band', 2000, sampleRate, 0.7);
  for (let at = 0; at < samples; ) {
    const burst = Math.round(sampleRate * (0.5 + 1.5 * random()));
    const blowEvery = sampleRate / (18 + 8 * random());
    for (let i = 0; i < burst && at + i < samples; i++) {
      const sinceBlow = (i % blowEvery) / sampleRate;
      blows[at + i] = Math.exp(-sinceBlow / 0.012) * (metal[at + i] as number);
    }
    at += burst + Math.round(sampleRate * (0.5 + 1.5 * random()));
  }
  const hiss = filtered(whiteNoise(samples, random), 'band', 3500, sampleRate, 0.5);
  return atUnitLevel(mixed([blows, 1], [hiss, 0.25]));
}
