/**
 * Speech said slower or faster at its own pitch: WSOLA, "waveform similarity overlap-add" (Verhelst and Roelands,
 * ICASSP 1993, 554-557). Frames are laid down at an even step; each is taken from near where it is due in the source,
 * at the place where it goes on most like the frame before, so that no pitch period is broken.
 */

/** Length of a frame, seconds: two pitch periods of the lowest voice there is here, and short against a syllable. */
const FRAME_S = 0.025;
/** How far from its due place a frame may be taken, seconds: a pitch period of 100 Hz either way. */
const SEARCH_S = 0.01;
/** Both shift and sample are tried this coarsely first, samples a second: speech is alike where its low part is. */
const COARSE_HZ = 8_000;

/**
 * The same speech at another pace.
 * @param samples one channel
 * @param sampleRateHz samples a second
 * @param pace how much faster: 0.5 takes twice as long, 2 half as long
 * @returns as many samples as the speech then lasts
 * @throws RangeError for a pace outside 0.5 to 2, where words come apart
 */
export function stretched(
  samples: Float32Array<ArrayBuffer>,
  sampleRateHz: number,
  pace: number,
): Float32Array<ArrayBuffer> {
  if (!(pace >= 0.5 && pace <= 2))
    throw new RangeError(`Speech keeps its words from 0.5 to 2, not at ${pace}.`);
  if (pace === 1) return samples;
  const half = Math.round((FRAME_S * sampleRateHz) / 2);
  const search = Math.round(SEARCH_S * sampleRateHz);
  const coarse = Math.max(1, Math.round(sampleRateHz / COARSE_HZ));
  const source = padded(samples, 2 * half + search);
  const window = Float32Array.from(
    { length: 2 * half },
    (_, at) => 0.5 - 0.5 * Math.cos((Math.PI * at) / half),
  );
  const made = new Float32Array(Math.round(samples.length / pace));
  // The first frame is centred on the first sample: its rising half lies before the speech.
  let from = search + half;
  for (let at = -half; at < made.length; at += half) {
    if (at > -half) {
      const due = search + half + Math.round((at + half) * pace);
      const goesOn = from + half;
      const near = mostAlike(source, goesOn, due, 2 * half, search, coarse);
      from = coarse === 1 ? near : mostAlike(source, goesOn, near, 2 * half, coarse, 1);
    }
    for (let step = Math.max(0, -at); step < 2 * half && at + step < made.length; step++) {
      made[at + step] = (made[at + step] ?? 0) + (window[step] ?? 0) * (source[from + step] ?? 0);
    }
  }
  return made;
}

/** Silence before and after, so that every frame that may be looked at is there. */
function padded(samples: Float32Array, by: number): Float32Array {
  const longer = new Float32Array(samples.length + 2 * by);
  longer.set(samples, by);
  return longer;
}

/** Where, within `search` of `due`, a frame is most like the one at `wanted`: the largest normalised correlation. */
function mostAlike(
  source: Float32Array,
  wanted: number,
  due: number,
  length: number,
  search: number,
  step: number,
): number {
  let best = due;
  let bestLikeness = Number.NEGATIVE_INFINITY;
  for (let from = due - search; from <= due + search; from += step) {
    let product = 0;
    let power = 0;
    for (let at = 0; at < length; at += step) {
      const sample = source[from + at] ?? 0;
      product += sample * (source[wanted + at] ?? 0);
      power += sample * sample;
    }
    const likeness = power === 0 ? 0 : product / Math.sqrt(power);
    if (likeness > bestLikeness) {
      best = from;
      bestLikeness = likeness;
    }
  }
  return best;
}
