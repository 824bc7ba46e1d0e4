/**
 * Cuts sound into overlapping spectra, changes the power of mel bands in them, and puts them together again.
 * Method: weighted overlap-add, R. Crochiere, "A weighted overlap-add method of short-time Fourier analysis and
 * synthesis", IEEE Transactions on Acoustics, Speech and Signal Processing 28(1), 1980.
 */
import { EARS_RATE_HZ } from '../../ears/sound-format.ts';
import { Fourier } from './fourier.ts';
import { bandCount, bandWeights } from './mel-bands.ts';

/** Samples from one frame to the next: 10 ms, as in the model's features. */
export const hopSamples = EARS_RATE_HZ / 100;

/** Three hops: the squares of square-root Hann windows then sum to the same at every sample. */
export const frameSamples = 3 * hopSamples;
const windowSum = 1.5;

const transformLength = 512;
const binCount = transformLength / 2 + 1;

/** Kaldi computes on samples of 16 bits, with a Hamming window of 25.625 ms and a pre-emphasis of 0.97. */
const fullScale = 32_768;
const kaldiWindowSamples = 410;
const kaldiEmphasis = 0.97;

const halfWindow = Float64Array.from({ length: frameSamples }, (_, i) =>
  Math.sin((Math.PI * (i + 0.5)) / frameSamples),
);
const hamming = Float64Array.from(
  { length: kaldiWindowSamples },
  (_, i) => 0.54 - 0.46 * Math.cos((2 * Math.PI * i) / (kaldiWindowSamples - 1)),
);

/** From our power in a bin to the one that Kaldi would find there. */
const toKaldiPower = Float64Array.from({ length: binCount }, (_, bin) => {
  const energy = (window: Float64Array) => window.reduce((sum, w) => sum + w * w, 0);
  const angle = (2 * Math.PI * bin) / transformLength;
  const emphasis = 1 + kaldiEmphasis ** 2 - 2 * kaldiEmphasis * Math.cos(angle);
  return (fullScale ** 2 * emphasis * energy(hamming)) / energy(halfWindow);
});

interface BandShare {
  readonly bin: number;
  readonly weight: number;
}
const binsOfBand: readonly (readonly BandShare[])[] = bandWeights(transformLength, EARS_RATE_HZ).map(
  (weights) => [...weights].map((weight, bin) => ({ bin, weight })).filter(({ weight }) => weight > 0),
);

/** For each bin, how it follows the gains of the bands around it; bins outside all bands follow the nearest. */
const bandsOfBin: readonly (readonly { readonly band: number; readonly share: number }[])[] = Array.from(
  { length: binCount },
  (_, bin) => {
    const near = binsOfBand.flatMap((bins, band) =>
      bins.filter((entry) => entry.bin === bin).map(({ weight }) => ({ band, weight })),
    );
    if (near.length === 0) return [{ band: bin < binCount / 2 ? 0 : bandCount - 1, share: 1 }];
    const sum = near.reduce((total, { weight }) => total + weight, 0);
    return near.map(({ band, weight }) => ({ band, share: weight / sum }));
  },
);

export interface Spectrum {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

const fourier = new Fourier(transformLength);

/** The spectrum of the {@link frameSamples} samples from `at`. */
export function spectrumAt(samples: Float32Array, at: number): Spectrum {
  const real = new Float64Array(transformLength);
  const imaginary = new Float64Array(transformLength);
  for (let i = 0; i < frameSamples; i++) real[i] = (samples[at + i] as number) * (halfWindow[i] as number);
  fourier.forward(real, imaginary);
  return { real, imaginary };
}

/** Power in each mel band, as Kaldi's features have it. */
export function bandPowersOf({ real, imaginary }: Spectrum): Float64Array {
  return Float64Array.from(binsOfBand, (bins) => {
    let sum = 0;
    for (const { bin, weight } of bins) {
      const power = (real[bin] as number) ** 2 + (imaginary[bin] as number) ** 2;
      sum += weight * power * (toKaldiPower[bin] as number);
    }
    return sum;
  });
}

/** Multiplies the power of each band by its gain, the bins between two bands by something between. */
export function applyGains({ real, imaginary }: Spectrum, logGains: ArrayLike<number>): void {
  for (let bin = 0; bin < binCount; bin++) {
    let log = 0;
    for (const { band, share } of bandsOfBin[bin] ?? []) log += share * (logGains[band] as number);
    const factor = Math.exp(log / 2);
    real[bin] = (real[bin] as number) * factor;
    imaginary[bin] = (imaginary[bin] as number) * factor;
    if (bin > 0 && bin < transformLength / 2) {
      real[transformLength - bin] = real[bin] as number;
      imaginary[transformLength - bin] = -(imaginary[bin] as number);
    }
  }
}

/** Adds the spectrum's sound to `out` from `at` on; what falls outside is lost. The spectrum is used up. */
export function addSpectrum(spectrum: Spectrum, out: Float32Array, at: number): void {
  fourier.inverse(spectrum.real, spectrum.imaginary);
  for (let i = Math.max(0, -at); i < frameSamples && at + i < out.length; i++) {
    const sample = ((spectrum.real[i] as number) * (halfWindow[i] as number)) / windowSum;
    out[at + i] = (out[at + i] as number) + sample;
  }
}
