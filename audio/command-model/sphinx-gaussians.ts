/**
 * Reads the `means` and `variances` files of a Sphinx acoustic model.
 * Source of the format: `gauden_param_read` in pocketsphinx/src/libpocketsphinx/ms_gauden.c (CMU Sphinx).
 */
import { openSphinxFile } from './sphinx-header.ts';

/** Values ordered codebook, stream, density, dimension. */
export interface GaussianParameters {
  readonly codebooks: number;
  readonly densities: number;
  /** Dimensions of each feature stream: cepstra, their first and their second differences. */
  readonly streamLengths: readonly number[];
  /** The vector of one density, a view that must not be written to. */
  vector(codebook: number, stream: number, density: number): Float32Array;
}

export function readGaussianParameters(bytes: Uint8Array, fileName: string): GaussianParameters {
  const cursor = openSphinxFile(bytes, fileName);
  const codebooks = cursor.int32();
  const streams = cursor.int32();
  const densities = cursor.int32();
  const streamLengths = Array.from({ length: streams }, () => cursor.int32());
  const frameLength = streamLengths.reduce((sum, length) => sum + length, 0);
  const count = cursor.int32();
  if (count !== codebooks * densities * frameLength) {
    throw new Error(
      `${fileName} announces ${count} values, its dimensions need ${codebooks * densities * frameLength}.`,
    );
  }
  const values = cursor.float32s(count);
  const streamStarts = streamLengths.map(
    (_, s) => densities * streamLengths.slice(0, s).reduce((a, b) => a + b, 0),
  );
  return {
    codebooks,
    densities,
    streamLengths,
    vector(codebook, stream, density) {
      const length = streamLengths[stream];
      const streamStart = streamStarts[stream];
      if (length === undefined || streamStart === undefined)
        throw new Error(`There is no feature stream ${stream}.`);
      const start = codebook * densities * frameLength + streamStart + density * length;
      return values.subarray(start, start + length);
    },
  };
}
