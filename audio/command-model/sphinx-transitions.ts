/**
 * Reads the `transition_matrices` file of a Sphinx acoustic model.
 * Source of the format: `tmat_init` in pocketsphinx/src/libpocketsphinx/tmat.c (CMU Sphinx).
 */
import { openSphinxFile } from './sphinx-header.ts';

/** For every matrix, for every emitting state, the probability (0 to 1) of staying in it one frame more. */
export type StayProbabilities = readonly (readonly number[])[];

export function readStayProbabilities(bytes: Uint8Array, fileName: string): StayProbabilities {
  const cursor = openSphinxFile(bytes, fileName);
  const matrices = cursor.int32();
  const fromStates = cursor.int32();
  const toStates = cursor.int32();
  const count = cursor.int32();
  if (count !== matrices * fromStates * toStates) {
    throw new Error(
      `${fileName} announces ${count} values for ${matrices} matrices of ${fromStates} by ${toStates}.`,
    );
  }
  return Array.from({ length: matrices }, () =>
    Array.from({ length: fromStates }, (_, state) => {
      // The file holds counts that are not normalised.
      const row = cursor.float32s(toStates);
      const total = row.reduce((sum, value) => sum + value, 0);
      return (row[state] ?? 0) / total;
    }),
  );
}
