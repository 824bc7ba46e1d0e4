/**
 * Active speech level after ITU-T Recommendation P.56, method B: the level of the speech while there is speech, so
 * that pauses do not make a sentence count as quiet. Clips are levelled by it, hence a short word and a long
 * sentence come out of the loudspeaker equally loud.
 */

/** Time constant of the envelope, seconds (P.56). */
const ENVELOPE_S = 0.03;
/** How long speech counts as going on after the envelope has sunk, seconds (P.56). */
const HANGOVER_S = 0.2;
/** How far the threshold of activity lies under the active level, decibels (P.56). */
const MARGIN_DB = 15.9;
/** Thresholds tried: full scale, halved sixteen times, as for 16-bit samples. */
const THRESHOLD_COUNT = 17;

export interface ActiveLevel {
  /** Active speech level, decibels of full scale; a full-scale sine reads -3.01. -Infinity for silence. */
  readonly levelDbfs: number;
  /** Share of the samples that counted as active, 0 to 1. */
  readonly activity: number;
}

/**
 * Measures the active speech level.
 * @param samples one channel, full scale 1
 * @param sampleRateHz samples a second
 */
export function activeLevel(samples: Float32Array, sampleRateHz: number): ActiveLevel {
  const energy = samples.reduce((sum, sample) => sum + sample * sample, 0);
  if (energy === 0) return { levelDbfs: Number.NEGATIVE_INFINITY, activity: 0 };
  const counts = activeCounts(samples, sampleRateHz);
  let above: { levelDb: number; marginDb: number } | undefined;
  for (const [index, count] of counts.entries()) {
    if (count === 0) continue;
    const levelDb = 10 * Math.log10(energy / count);
    const marginDb = levelDb - thresholdDb(index);
    if (marginDb >= MARGIN_DB) {
      const level = above === undefined ? levelDb : between(above, { levelDb, marginDb });
      return { levelDbfs: level, activity: energy / 10 ** (level / 10) / samples.length };
    }
    above = { levelDb, marginDb };
  }
  const levelDbfs = 10 * Math.log10(energy / samples.length);
  return { levelDbfs, activity: 1 };
}

/** For each threshold, loudest first, the number of samples at which the envelope, held for the hangover, reaches it. */
function activeCounts(samples: Float32Array, sampleRateHz: number): Int32Array {
  const keep = Math.exp(-1 / (sampleRateHz * ENVELOPE_S));
  const hangover = Math.round(HANGOVER_S * sampleRateHz);
  const thresholds = Float64Array.from({ length: THRESHOLD_COUNT }, (_, index) => 2 ** -index);
  const counts = new Int32Array(THRESHOLD_COUNT);
  const sinceActive = new Int32Array(THRESHOLD_COUNT).fill(hangover);
  let smoothed = 0;
  let envelope = 0;
  for (const sample of samples) {
    smoothed = keep * smoothed + (1 - keep) * Math.abs(sample);
    envelope = keep * envelope + (1 - keep) * smoothed;
    for (let index = 0; index < THRESHOLD_COUNT; index++) {
      const since = envelope >= (thresholds[index] ?? 0) ? 0 : (sinceActive[index] ?? 0) + 1;
      sinceActive[index] = since;
      if (since < hangover) counts[index] = (counts[index] ?? 0) + 1;
    }
  }
  return counts;
}

function thresholdDb(index: number): number {
  return -index * 20 * Math.log10(2);
}

/** The level where the margin is met, on a straight line between the thresholds above and below it. */
function between(
  above: { readonly levelDb: number; readonly marginDb: number },
  below: { readonly levelDb: number; readonly marginDb: number },
): number {
  const share = (MARGIN_DB - above.marginDb) / (below.marginDb - above.marginDb);
  return above.levelDb + share * (below.levelDb - above.levelDb);
}
