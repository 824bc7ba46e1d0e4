/**
 * Makes sound ready for the command model as it comes, for listening that cannot wait for an utterance's end (a stop
 * word while the mouth speaks). The speaker's long-term spectrum is not known yet: it is taken from an earlier
 * utterance, or for a typical one.
 */
import { expectedMean } from './expected-mean.ts';
import { NoiseTracker } from './noise-tracker.ts';
import {
  addSpectrum,
  applyGains,
  bandPowersOf,
  frameSamples,
  hopSamples,
  spectrumAt,
} from './spectral-frames.ts';
import { equaliserFor } from './utterance-mean.ts';

export class StreamCleaner {
  readonly #tracker = new NoiseTracker();
  readonly #equaliser: Float64Array;
  #pending = new Float32Array(0);
  /** What frames that are not complete yet have left so far; as long as a frame. */
  #overlap = new Float32Array(frameSamples);

  /** @param mean mean cepstra of the speech to come, from an earlier utterance's `mean` */
  constructor(mean: ArrayLike<number> = expectedMean) {
    this.#equaliser = equaliserFor(mean);
  }

  /** Takes the next samples, any number; gives those that are ready, some 30 ms behind. */
  push(samples: Float32Array): Float32Array {
    const joined = new Float32Array(this.#pending.length + samples.length);
    joined.set(this.#pending);
    joined.set(samples, this.#pending.length);
    const frames = Math.max(0, Math.floor((joined.length - frameSamples) / hopSamples) + 1);
    const out = new Float32Array(frames * hopSamples);
    for (let frame = 0; frame < frames; frame++) {
      const spectrum = spectrumAt(joined, frame * hopSamples);
      const logGains = this.#tracker.next(bandPowersOf(spectrum)).map(Math.log);
      applyGains(
        spectrum,
        logGains.map((gain, band) => gain + (this.#equaliser[band] as number)),
      );
      addSpectrum(spectrum, this.#overlap, 0);
      out.set(this.#overlap.subarray(0, hopSamples), frame * hopSamples);
      this.#overlap.copyWithin(0, hopSamples);
      this.#overlap.fill(0, frameSamples - hopSamples);
    }
    this.#pending = joined.slice(frames * hopSamples);
    return out;
  }
}
