/**
 * Merges senones that weigh their codebook's densities nearly alike, so that the cost of a frame stays the same however
 * many phrases the grammar grows: the network scores every senone in every frame, whatever list is active.
 * Method: J. H. Ward, "Hierarchical grouping to optimize an objective function", 1963, on square roots of weights, in
 * which Euclidean distance is Hellinger's between the mixtures.
 */
import type { MixtureWeights } from './sphinx-mixture-weights.ts';

export interface TiedSenones {
  /** The senone that stands for this one, itself where nothing was merged. */
  representative(senone: number): number;
  /** All senones that a representative stands for, itself among them. */
  members(representative: number): readonly number[];
  /** Every representative, ascending. */
  readonly all: readonly number[];
}

interface Merge {
  readonly cost: number;
  readonly kept: number;
  readonly gone: number;
}

/** @param limit how many representatives to leave at most (as long as every codebook keeps one). */
export function tieSenones(
  used: Iterable<number>,
  baseOfSenone: readonly number[],
  weights: MixtureWeights,
  limit: number,
): TiedSenones {
  const byCodebook = new Map<number, number[]>();
  for (const senone of [...new Set(used)].sort((a, b) => a - b)) {
    const codebook = baseOfSenone[senone];
    if (codebook === undefined || codebook < 0) throw new Error(`Senone ${senone} belongs to no phone.`);
    byCodebook.set(codebook, [...(byCodebook.get(codebook) ?? []), senone]);
  }
  // Ward's costs never fall from one merge of a codebook to its next, so the cheapest ones of all codebooks together
  // can be carried out in order of cost.
  const merges = [...byCodebook.values()].flatMap((senones) => wardMerges(senones, weights));
  const count = [...byCodebook.values()].reduce((sum, senones) => sum + senones.length, 0);
  const carriedOut = merges
    .sort((a, b) => a.cost - b.cost || a.gone - b.gone)
    .slice(0, Math.max(0, count - limit));
  const members = new Map([...byCodebook.values()].flat().map((senone) => [senone, [senone]]));
  for (const { kept, gone } of carriedOut) {
    members.set(kept, [...(members.get(kept) ?? []), ...(members.get(gone) ?? [])]);
    members.delete(gone);
  }
  const representatives = new Map(
    [...members].flatMap(([kept, group]) => group.map((senone) => [senone, kept])),
  );
  return {
    representative(senone) {
      const found = representatives.get(senone);
      if (found === undefined) throw new Error(`Senone ${senone} was not among those to be tied.`);
      return found;
    },
    members: (representative) => members.get(representative) ?? [],
    all: [...members.keys()].sort((a, b) => a - b),
  };
}

/** Every merge down to one cluster, in order of rising cost. */
function wardMerges(senones: readonly number[], weights: MixtureWeights): readonly Merge[] {
  const points = senones.map((senone) => {
    const point = new Float64Array(weights.streams * weights.densities);
    for (let stream = 0; stream < weights.streams; stream++) {
      for (let density = 0; density < weights.densities; density++) {
        point[stream * weights.densities + density] = Math.sqrt(weights.weight(stream, density, senone));
      }
    }
    return point;
  });
  const size = senones.map(() => 1);
  const alive = senones.map(() => true);
  const cost = points.map((a, i) =>
    Float64Array.from(points, (b, j) => (i === j ? Number.POSITIVE_INFINITY : squaredDistance(a, b) / 2)),
  );
  const at = (i: number, j: number) => cost[i]?.[j] ?? Number.POSITIVE_INFINITY;
  const merges: Merge[] = [];
  for (let left = senones.length; left > 1; left--) {
    let [kept, gone, least] = [-1, -1, Number.POSITIVE_INFINITY];
    for (let i = 0; i < senones.length; i++) {
      if (!alive[i]) continue;
      for (let j = i + 1; j < senones.length; j++) {
        if (alive[j] && at(i, j) < least) [kept, gone, least] = [i, j, at(i, j)];
      }
    }
    const [a, b] = [size[kept] ?? 0, size[gone] ?? 0];
    for (let other = 0; other < senones.length; other++) {
      if (!alive[other] || other === kept || other === gone) continue;
      const c = size[other] ?? 0;
      // Lance and Williams' formula for Ward's criterion.
      const updated = ((a + c) * at(kept, other) + (b + c) * at(gone, other) - c * least) / (a + b + c);
      (cost[kept] as Float64Array)[other] = updated;
      (cost[other] as Float64Array)[kept] = updated;
    }
    alive[gone] = false;
    size[kept] = a + b;
    merges.push({ cost: least, kept: senones[kept] ?? -1, gone: senones[gone] ?? -1 });
  }
  return merges;
}

function squaredDistance(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) {
    const difference = (a[i] as number) - (b[i] as number);
    sum += difference * difference;
  }
  return sum;
}
