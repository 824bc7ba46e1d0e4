/**
 * A weighted graph and its file: OpenFst's mutable "vector" type over the tropical semiring ("standard" arcs).
 * Source of the format: fst.cc (FstHeader), vector-fst.h and symbol-free arcs of OpenFst 1.8 (Apache 2.0).
 */
export interface Arc {
  readonly input: number;
  readonly output: number;
  /** Negative natural logarithm of a probability. */
  readonly cost: number;
  readonly to: number;
}

/** State 0 is the start. */
export class Graph {
  private readonly arcsOf: Arc[][] = [[]];
  private readonly finalCosts = new Map<number, number>();

  addState(): number {
    return this.arcsOf.push([]) - 1;
  }

  addArc(from: number, arc: Arc): void {
    const arcs = this.arcsOf[from];
    if (!arcs) throw new Error(`There is no state ${from}.`);
    arcs.push(arc);
  }

  setFinal(state: number, cost: number): void {
    this.finalCosts.set(state, cost);
  }

  get stateCount(): number {
    return this.arcsOf.length;
  }

  arcs(state: number): readonly Arc[] {
    return this.arcsOf[state] ?? [];
  }

  finalCost(state: number): number {
    return this.finalCosts.get(state) ?? Number.POSITIVE_INFINITY;
  }
}

const magicNumber = 2125659606;
const fileVersion = 2;
/** Properties kExpanded and kMutable: what a vector graph always has. */
const properties = 3n;

export function writeVectorGraph(graph: Graph): Uint8Array {
  const text = (value: string): Uint8Array => {
    const encoded = new TextEncoder().encode(value);
    const out = new Uint8Array(4 + encoded.length);
    new DataView(out.buffer).setInt32(0, encoded.length, true);
    out.set(encoded, 4);
    return out;
  };
  const type = text('vector');
  const arcType = text('standard');
  const arcCount = Array.from({ length: graph.stateCount }, (_, s) => graph.arcs(s).length).reduce(
    (a, b) => a + b,
    0,
  );
  const bytes = new Uint8Array(4 + type.length + arcType.length + 40 + 12 * graph.stateCount + 16 * arcCount);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const int32 = (value: number) => {
    view.setInt32(at, value, true);
    at += 4;
  };
  const int64 = (value: bigint) => {
    view.setBigInt64(at, value, true);
    at += 8;
  };
  const float32 = (value: number) => {
    view.setFloat32(at, value, true);
    at += 4;
  };
  int32(magicNumber);
  for (const part of [type, arcType]) {
    bytes.set(part, at);
    at += part.length;
  }
  int32(fileVersion);
  int32(0); // flags: no symbol tables inside
  int64(properties);
  int64(0n); // the start state
  int64(BigInt(graph.stateCount));
  int64(0n); // arcs are not counted here in a vector graph
  for (let state = 0; state < graph.stateCount; state++) {
    float32(graph.finalCost(state));
    const arcs = graph.arcs(state);
    int64(BigInt(arcs.length));
    for (const arc of arcs) {
      int32(arc.input);
      int32(arc.output);
      float32(arc.cost);
      int32(arc.to);
    }
  }
  return bytes;
}
