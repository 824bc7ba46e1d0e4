/**
 * Where the speech lies in a clip. Every MP3 decoder puts its own silence before and after (some cut the encoder's
 * delay off, some do not), so joined clips are placed by what is heard, not by where the file begins.
 */

/** Half-open span of samples. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * Louder than this is speech, decibels of full scale. Clips are levelled near -16, a weak opening "f" lies some 30
 * decibels lower, and the encoder's ripple around silence lower still.
 */
export const SPEECH_DBFS = -50;
/** Window over which loudness is taken, seconds: short enough to place an onset, long enough to miss a lone click. */
const WINDOW_S = 0.005;
/** Kept before and after, seconds, so that a soft attack or a fading end is not clipped. */
const LEAD_S = 0.012;
const TAIL_S = 0.03;

/**
 * Finds the speech.
 * @param samples one channel, full scale 1, already at its playing level
 * @param sampleRateHz samples a second
 * @param faintestDbfs the faintest thing taken for speech
 * @returns undefined where nothing is loud enough to be speech
 */
export function speechSpan(
  samples: Float32Array,
  sampleRateHz: number,
  faintestDbfs = SPEECH_DBFS,
): Span | undefined {
  const window = Math.max(1, Math.round(WINDOW_S * sampleRateHz));
  const loudEnough = 10 ** (faintestDbfs / 10) * window;
  let first: number | undefined;
  let last = 0;
  for (let at = 0; at < samples.length; at += window) {
    let energy = 0;
    for (const sample of samples.subarray(at, at + window)) energy += sample * sample;
    if (energy < loudEnough) continue;
    first ??= at;
    last = at + window;
  }
  if (first === undefined) return undefined;
  return {
    start: Math.max(0, first - Math.round(LEAD_S * sampleRateHz)),
    end: Math.min(samples.length, last + Math.round(TAIL_S * sampleRateHz)),
  };
}
