/** Word errors of a transcription, counted as speech recognition counts them. */

export interface WordErrors {
  readonly substituted: number;
  readonly deleted: number;
  readonly inserted: number;
  /** Words of the reference. */
  readonly spoken: number;
}

/** Costs of NIST's sclite: a substitution is cheaper than the deletion and insertion it stands for. */
const SUBSTITUTION = 4;
const GAP = 3;

/**
 * The errors of the cheapest alignment of what was heard with what was said.
 * Source of the costs: sclite of NIST's SCTK, its documentation, "Dynamic programming string alignment algorithm".
 */
export function wordErrors(said: readonly string[], heard: readonly string[]): WordErrors {
  interface Path {
    readonly cost: number;
    readonly substituted: number;
    readonly deleted: number;
    readonly inserted: number;
  }
  const start: Path = { cost: 0, substituted: 0, deleted: 0, inserted: 0 };
  const insertion = (path: Path): Path => ({ ...path, cost: path.cost + GAP, inserted: path.inserted + 1 });
  const deletion = (path: Path): Path => ({ ...path, cost: path.cost + GAP, deleted: path.deleted + 1 });
  const pairing = (path: Path, isSame: boolean): Path =>
    isSame ? path : { ...path, cost: path.cost + SUBSTITUTION, substituted: path.substituted + 1 };

  let row: Path[] = [start];
  for (const [i] of heard.entries()) row.push(insertion(row[i] as Path));
  for (const word of said) {
    const above = row;
    row = [deletion(above[0] as Path)];
    for (const [i, other] of heard.entries()) {
      const ways = [
        pairing(above[i] as Path, word === other),
        insertion(row[i] as Path),
        deletion(above[i + 1] as Path),
      ];
      row.push(ways.reduce((best, way) => (way.cost < best.cost ? way : best)));
    }
  }
  const { substituted, deleted, inserted } = row.at(-1) as Path;
  return { substituted, deleted, inserted, spoken: said.length };
}

/** Errors for each word spoken, over all transcriptions together. @throws RangeError when nothing was spoken */
export function wordErrorRate(all: readonly WordErrors[]): number {
  const spoken = all.reduce((sum, each) => sum + each.spoken, 0);
  if (spoken === 0) throw new RangeError('No words were spoken: there is no rate.');
  return all.reduce((sum, each) => sum + each.substituted + each.deleted + each.inserted, 0) / spoken;
}
