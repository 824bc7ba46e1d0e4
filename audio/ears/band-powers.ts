import { Fourier } from '../command-model/listening/fourier.ts';
import { EARS_RATE_HZ } from './sound-format.ts';

/** Samples looked at for one spectrum: 32 ms, long enough to part the bands, short against a syllable. */
export const SPECTRUM_SAMPLES = 512;

const window = Float64Array.from(
  { length: SPECTRUM_SAMPLES },
  (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / SPECTRUM_SAMPLES),
);
const fourier = new Fourier(SPECTRUM_SAMPLES);
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
  fourier.forward(re, im);
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
