/** A piston compressor that thumps and hisses, and an angle grinder that is put to steel now and then. */
import { atUnitLevel, filtered, mixed, whiteNoise } from './basics.ts';

/** Root mean square 1. */
export function workshopNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const strokeHz = 13 + 5 * random();
  const spindleHz = 150 + 40 * random();
  const thump = new Float32Array(samples);
  const grinder = new Float32Array(samples);
  const steel = filtered(whiteNoise(samples, random), 'high', 2500, sampleRate);
  let [touching, left] = [false, 0];
  let press = 0;
  for (let i = 0; i < samples; i++) {
    const t = i / sampleRate;
    const stroke = (t * strokeHz) % 1;
    thump[i] = Math.exp(-12 * stroke) * Math.sin(2 * Math.PI * 70 * (stroke / strokeHz));
    if (left-- <= 0) {
      touching = !touching;
      left = Math.round(sampleRate * (0.5 + 2 * random()));
    }
    press += ((touching ? 1 : 0) - press) / (0.05 * sampleRate);
    const sag = 1 - 0.15 * press; // the spindle slows under load
    let whine = 0;
    for (const [order, gain] of [
      [1, 0.5],
      [2, 0.3],
      [9, 1],
      [18, 0.6],
    ] as const)
      whine += gain * Math.sin(2 * Math.PI * spindleHz * sag * order * t);
    grinder[i] = 0.4 * whine + 1.2 * press * (steel[i] as number);
  }
  const hiss = filtered(whiteNoise(samples, random), 'band', 3000, sampleRate, 0.5);
  return atUnitLevel(mixed([thump, 1], [grinder, 0.8], [hiss, 0.3]));
}
