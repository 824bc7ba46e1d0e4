/**
 * Which output of the network scores which senone.
 *
 * Each codebook's senones are one block of a block-diagonal matrix, and all blocks of one matrix have the same height.
 * Sounds differ much in how many senones a vocabulary uses, so codebooks of similar need share a matrix; one matrix
 * for all would be two thirds padding, and most of the run time is spent in it.
 */
export interface CodebookGroup {
  /** Codebooks (base phones) whose blocks make up the matrix, in order. */
  readonly codebooks: readonly number[];
  /** Height of each block. */
  readonly slots: number;
  /** For each codebook, the senones in its slots; the rest of the block is padding. */
  readonly senones: readonly (readonly number[])[];
}

export interface OutputLayout {
  readonly groups: readonly CodebookGroup[];
  /** Place of each used senone among all slots of all groups. */
  readonly slotOfSenone: ReadonlyMap<number, number>;
  readonly slotCount: number;
}

/** @param groupLimit the most matrices to use; each has a small cost of its own. */
export function layOutOutputs(
  usedSenones: Iterable<number>,
  baseOfSenone: readonly number[],
  groupLimit: number,
): OutputLayout {
  const byCodebook = new Map<number, number[]>();
  for (const senone of [...new Set(usedSenones)].sort((a, b) => a - b)) {
    const codebook = baseOfSenone[senone];
    if (codebook === undefined || codebook < 0) throw new Error(`Senone ${senone} belongs to no phone.`);
    const list = byCodebook.get(codebook);
    if (list) list.push(senone);
    else byCodebook.set(codebook, [senone]);
  }
  const sorted = [...byCodebook].sort(([a, x], [b, y]) => x.length - y.length || a - b);
  const groups = leastPadding(
    sorted.map(([, senones]) => senones.length),
    groupLimit,
  ).map(([first, end]): CodebookGroup => {
    const members = sorted.slice(first, end);
    return {
      codebooks: members.map(([codebook]) => codebook),
      slots: Math.max(...members.map(([, senones]) => senones.length)),
      senones: members.map(([, senones]) => senones),
    };
  });
  const slotOfSenone = new Map<number, number>();
  let slotCount = 0;
  for (const { slots, senones } of groups) {
    for (const block of senones) {
      block.forEach((senone, slot) => {
        slotOfSenone.set(senone, slotCount + slot);
      });
      slotCount += slots;
    }
  }
  return { groups, slotOfSenone, slotCount };
}

/**
 * Cuts ascending sizes into at most `limit` runs so that the sum over runs of length times largest size is least.
 * @returns for each run its first place and the place behind its last.
 */
export function leastPadding(
  ascending: readonly number[],
  limit: number,
): readonly (readonly [number, number])[] {
  interface Cut {
    readonly area: number;
    readonly runs: readonly (readonly [number, number])[];
  }
  // best[k] is the cheapest way to cover the first k sizes with the runs allowed so far.
  let best: (Cut | undefined)[] = [{ area: 0, runs: [] }, ...ascending.map(() => undefined)];
  for (let run = 0; run < limit; run++) {
    const before = best;
    best = before.map((known, end) => {
      let cheapest = known;
      const largest = ascending[end - 1] ?? 0;
      for (let first = 0; first < end; first++) {
        const start = before[first];
        if (!start) continue;
        const area = start.area + (end - first) * largest;
        if (!cheapest || area < cheapest.area) cheapest = { area, runs: [...start.runs, [first, end]] };
      }
      return cheapest;
    });
  }
  return best.at(-1)?.runs ?? [];
}
