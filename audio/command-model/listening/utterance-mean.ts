/** The long-term spectrum of speech, as a mean of cepstra, and the equaliser that brings it to the expected one. */
import { expectedMean } from './expected-mean.ts';
import { cepstraOf, cepstrumCount, logBandsOf } from './mel-bands.ts';

/** Mean of the cepstra of frames. @param logBands for each frame, natural logarithms of its band powers; at least one */
export function meanCepstra(logBands: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(cepstrumCount);
  for (const frame of logBands) {
    const cepstra = cepstraOf(frame);
    for (let d = 0; d < cepstrumCount; d++) {
      mean[d] = (mean[d] as number) + (cepstra[d] as number) / logBands.length;
    }
  }
  return mean;
}

/** Logarithms of the power gains of the bands that take speech of that mean to the expected mean. */
export function equaliserFor(mean: ArrayLike<number>): Float64Array {
  return logBandsOf(expectedMean.map((expected, d) => expected - (mean[d] as number)));
}
