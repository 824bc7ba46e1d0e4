import { bandPowers, SPECTRUM_SAMPLES } from '../../../audio/ears/band-powers.ts';

/** Rate the bands are measured at, samples a second. */
export const BAND_RATE_HZ = 16_000;

/** Spectra taken of a sound, about: enough for its average, few enough for an hour of clips. */
const SPECTRA = 32;

/**
 * Shares of the power of a sound that lie in each band, 0 to 1.
 * @param samples at {@link BAND_RATE_HZ}
 * @param edgesHz rising edges; what lies outside them counts in the whole but in no band
 */
export function bandShares(samples: Float32Array, edgesHz: readonly number[]): readonly number[] {
  const edges = [0, ...edgesHz, BAND_RATE_HZ / 2];
  const sums = edges.slice(1).map(() => 0);
  const padded = new Float32Array(samples.length + 2 * SPECTRUM_SAMPLES);
  padded.set(samples, SPECTRUM_SAMPLES);
  const step = Math.max(SPECTRUM_SAMPLES / 2, Math.floor(padded.length / SPECTRA));
  for (let at = 0; at + SPECTRUM_SAMPLES <= padded.length; at += step) {
    for (const [band, power] of bandPowers(padded.subarray(at, at + SPECTRUM_SAMPLES), edges).entries()) {
      sums[band] = (sums[band] ?? 0) + power;
    }
  }
  const whole = sums.reduce((sum, power) => sum + power, 0);
  return sums.slice(1, -1).map((power) => power / whole);
}
