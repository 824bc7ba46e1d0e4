/** A voice in a shed: the direct sound, and a tail of reflections that dies away. */
import { filtered, whiteNoise } from './noises/basics.ts';

export interface Shed {
  /** Time in which the tail falls by 60 dB, seconds. */
  readonly decaySeconds: number;
  /** Direct sound over the tail, decibels: little when the speaker stands far off. */
  readonly directOverTailDb: number;
}

/** At arm's length under a roof; and from some metres off, half turned away. Values by ear, no source. */
export const sheds = {
  near: { decaySeconds: 0.5, directOverTailDb: 6 },
  far: { decaySeconds: 0.7, directOverTailDb: -3 },
} as const satisfies Readonly<Record<string, Shed>>;
export type ShedName = keyof typeof sheds;

const firstReflectionSeconds = 0.006;
/** The walls swallow treble. */
const tailHz = 4000;

/**
 * The voice with its reflections, the tail included. The tail is noise that decays exponentially.
 * Source: J. D. Polack's statistical model, "La transmission de l'énergie sonore dans les salles", thesis, Le Mans, 1988.
 */
export function inShed(
  speech: Float32Array,
  { decaySeconds, directOverTailDb }: Shed,
  sampleRate: number,
  random: () => number,
): Float32Array {
  const length = Math.round(0.6 * decaySeconds * sampleRate);
  const first = Math.round(firstReflectionSeconds * sampleRate);
  const tail = filtered(whiteNoise(length, random), 'low', tailHz, sampleRate).map((sample, i) =>
    i < first ? 0 : sample * 10 ** ((-3 * i) / (decaySeconds * sampleRate)),
  );
  const tailEnergy = tail.reduce((sum, sample) => sum + sample * sample, 0);
  const gain = Math.sqrt(10 ** (-directOverTailDb / 10) / tailEnergy);
  const out = new Float32Array(speech.length + length);
  speech.forEach((sample, at) => {
    out[at] = (out[at] as number) + sample;
    if (sample === 0) return;
    const scaled = sample * gain;
    for (let i = first; i < length; i++) out[at + i] = (out[at + i] as number) + scaled * (tail[i] as number);
  });
  return out;
}
