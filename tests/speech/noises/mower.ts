/** A mower or combine some way off: knives that whirr, a motor under them, the treble lost in the air between. */
import { atUnitLevel, filtered, mixed, pinkNoise, whiteNoise } from './basics.ts';

/** Root mean square 1. It swells and fades as the machine turns and the air moves. */
export function mowerNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const bladeHz = 90 + 60 * random();
  const motorHz = bladeHz / 3;
  const swellHz = 0.15 + 0.2 * random();
  const phase = 2 * Math.PI * random();
  const whirr = whiteNoise(samples, random);
  const tones = new Float32Array(samples);
  for (let i = 0; i < samples; i++) {
    const t = i / sampleRate;
    whirr[i] = (whirr[i] as number) * (1 + 0.7 * Math.sin(2 * Math.PI * bladeHz * t));
    for (let order = 1; order <= 12; order++)
      tones[i] = (tones[i] as number) + Math.sin(2 * Math.PI * motorHz * order * t + phase * order) / order;
  }
  const near = mixed(
    [filtered(whirr, 'band', 900, sampleRate, 0.5), 1],
    [tones, 1],
    [pinkNoise(samples, random), 0.5],
  );
  const far = filtered(near, 'low', 2200, sampleRate);
  return atUnitLevel(
    far.map((sample, i) => sample * (1 + 0.4 * Math.sin((2 * Math.PI * swellHz * i) / sampleRate + phase))),
  );
}
