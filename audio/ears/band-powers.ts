import { EARS_RATE_HZ } from './sound-format.ts';

/** Samples looked at for one spectrum: 32 ms, long enough to part the bands, short against a syllable. */
export const SPECTRUM_SAMPLES = 512;

const window = Float64Array.from(
  { length: SPECTRUM_SAMPLES },
  (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / SPECTRUM_SAMPLES),
);
const windowPower = window.reduce((sum, w) => sum + w * w, 0);

/**
 * Power of a frame in each band, scaled so that the bands of white noise sum to the noise's mean square (one-sided).
 * @param frame {@link SPECTRUM_SAMPLES} samples at the ears' rate
 * @param edgesHz rising band edges; band i runs from edge i up to, not including, edge i + 1
 */
export function bandPowers(frame: Float32Array, edgesHz: readonly number[]): Float64Array {
  if (frame.length !== SPECTRUM_SAMPLES) {
    throw new RangeError(`A spectrum takes ${SPECTRUM_SAMPLES} samples, not ${frame.length}.`);
  }
  const re = new Float64Array(SPECTRUM_SAMPLES);
  const im = new Float64Array(SPECTRUM_SAMPLES);
  for (let i = 0; i < SPECTRUM_SAMPLES; i += 1) re[i] = (frame[i] as number) * (window[i] as number);
  fourierTransform(re, im);
  const powers = new Float64Array(edgesHz.length - 1);
  const scale = 2 / (SPECTRUM_SAMPLES * windowPower);
  let band = 0;
  for (let bin = 1; bin < SPECTRUM_SAMPLES / 2; bin += 1) {
    const hz = (bin * EARS_RATE_HZ) / SPECTRUM_SAMPLES;
    while (band < powers.length && hz >= (edgesHz[band + 1] as number)) band += 1;
    if (band === powers.length) break;
    if (hz < (edgesHz[0] as number)) continue;
    const a = re[bin] as number;
    const b = im[bin] as number;
    powers[band] = (powers[band] as number) + scale * (a * a + b * b);
  }
  return powers;
}

/** Discrete Fourier transform in place, radix 2 (Cooley and Tukey 1965). The length must be a power of two. */
export function fourierTransform(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j |= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j] as number, re[i] as number];
      [im[i], im[j]] = [im[j] as number, im[i] as number];
    }
  }
  for (let size = 2; size <= n; size *= 2) {
    const half = size / 2;
    for (let k = 0; k < half; k += 1) {
      const angle = (-2 * Math.PI * k) / size;
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      for (let at = k; at < n; at += size) {
        const to = at + half;
        const tr = (re[to] as number) * cos - (im[to] as number) * sin;
        const ti = (re[to] as number) * sin + (im[to] as number) * cos;
        re[to] = (re[at] as number) - tr;
        im[to] = (im[at] as number) - ti;
        re[at] = (re[at] as number) + tr;
        im[at] = (im[at] as number) + ti;
      }
    }
  }
}
