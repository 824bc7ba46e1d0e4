/**
 * Folds sequences that share beginnings and ends into the smallest acyclic automaton that accepts just them.
 * Method: a trie, then equal right languages merged from the leaves up (Revuz 1992).
 */
export interface AutomatonState<T> {
  readonly edges: readonly { readonly step: T; readonly to: number }[];
  readonly accepts: boolean;
}

/** @returns states, the last of which is the start; `nameOf` must tell unequal steps apart. */
export function minimalAutomaton<T>(
  sequences: readonly (readonly T[])[],
  nameOf: (step: T) => string,
): readonly AutomatonState<T>[] {
  interface TrieNode {
    readonly next: Map<string, { step: T; node: TrieNode }>;
    accepts: boolean;
  }
  const root: TrieNode = { next: new Map(), accepts: false };
  for (const sequence of sequences) {
    let node = root;
    for (const step of sequence) {
      const name = nameOf(step);
      let branch = node.next.get(name);
      if (!branch) {
        branch = { step, node: { next: new Map(), accepts: false } };
        node.next.set(name, branch);
      }
      node = branch.node;
    }
    node.accepts = true;
  }
  const states: AutomatonState<T>[] = [];
  const known = new Map<string, number>();
  const fold = (node: TrieNode): number => {
    const edges = [...node.next].map(([name, { step, node: child }]) => ({ name, step, to: fold(child) }));
    // In one order, whichever sequence came first: what follows is a set.
    const following = edges.map(({ name, to }) => `${name}>${to}`).sort();
    const key = `${node.accepts} ${following.join(' ')}`;
    const same = known.get(key);
    if (same !== undefined) return same;
    const number =
      states.push({ edges: edges.map(({ step, to }) => ({ step, to })), accepts: node.accepts }) - 1;
    known.set(key, number);
    return number;
  };
  fold(root);
  return states;
}
