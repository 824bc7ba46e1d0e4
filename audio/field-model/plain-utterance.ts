import { padMs } from '../command-model/listening/prepare-utterance.ts';
import { addDither } from '../ears/dither.ts';
import { msToSamples, samplesToMs } from '../ears/sound-format.ts';

export interface PlainUtterance {
  /** At the ears' rate; what the recogniser is to be given, all of it. */
  readonly samples: Float32Array;
  /** Where the speech lies in it, milliseconds. */
  readonly speechStartMs: number;
  readonly speechEndMs: number;
}

/**
 * An utterance as the microphone gave it, with a little of the room on both sides, for a network that was trained on such
 * sound. Only digital silence is dithered away, whose logarithm no network can bear.
 * @param raw at the ears' rate, -1 to 1
 * @param start first sample of the speech in `raw`
 * @param end the sample behind its last
 */
export function plainUtterance(raw: Float32Array, start: number, end: number): PlainUtterance {
  const from = Math.max(0, start - msToSamples(padMs));
  const samples = raw.slice(from, Math.min(raw.length, end + msToSamples(padMs)));
  addDither(samples);
  return { samples, speechStartMs: samplesToMs(start - from), speechEndMs: samplesToMs(end - from) };
}
