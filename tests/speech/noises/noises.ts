/** The noises by name. */
import type { Use } from '../voices.ts';
import { pinkNoise } from './basics.ts';
import { engineNoise } from './engine.ts';
import { hailNoise } from './hail.ts';
import { impactWrenchNoise } from './impact-wrench.ts';
import { mowerNoise } from './mower.ts';
import { secondTalkerNoise } from './second-talker.ts';
import { windNoise } from './wind.ts';
import { workshopNoise } from './workshop.ts';

/** Makes so many samples of noise, its level left to who uses it; the same for the same chance. */
export type NoiseMaker = (samples: number, sampleRate: number, random: () => number) => Float32Array;

/** Which of them settings may be chosen with: a noise that they were chosen with says little about others. */
export const noises = {
  pink: { use: 'tuning', make: (samples, _, random) => pinkNoise(samples, random) },
  engine: { use: 'tuning', make: engineNoise },
  wind: { use: 'tuning', make: windNoise },
  'impact wrench': { use: 'tuning', make: impactWrenchNoise },
  mower: { use: 'judging', make: mowerNoise },
  workshop: { use: 'judging', make: workshopNoise },
  hail: { use: 'judging', make: hailNoise },
  'second talker': { use: 'judging', make: secondTalkerNoise },
} as const satisfies Readonly<Record<string, { readonly use: Use; readonly make: NoiseMaker }>>;

export type NoiseName = keyof typeof noises;
export const NOISE_NAMES = Object.keys(noises) as readonly NoiseName[];
