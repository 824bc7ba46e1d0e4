import { describe, expect, it } from 'vitest';
import { Graph, writeVectorGraph } from '../../../audio/command-model/openfst-vector.ts';

describe('a graph file', () => {
  // Written out by hand from OpenFst's fst.cc and vector-fst.h: header, then for each state its final cost and arcs.
  it('has the bytes of an OpenFst vector graph', () => {
    const graph = new Graph();
    const end = graph.addState();
    graph.addArc(0, { input: 7, output: 9, cost: 0.5, to: end });
    graph.setFinal(end, 0);
    const hex = Buffer.from(writeVectorGraph(graph)).toString('hex');
    expect(hex).toBe(
      [
        'd6fdb27e', // magic 2125659606
        `06000000${Buffer.from('vector').toString('hex')}`,
        `08000000${Buffer.from('standard').toString('hex')}`,
        '02000000', // version
        '00000000', // no symbols
        '0300000000000000', // expanded, mutable
        '0000000000000000', // start
        '0200000000000000', // states
        '0000000000000000', // arcs, not counted
        '0000807f', // not final: infinity
        '0100000000000000',
        '07000000090000000000003f01000000',
        '00000000', // final
        '0000000000000000',
      ].join(''),
    );
  });

  it('has no arcs from a state that is not there', () => {
    expect(() => new Graph().addArc(3, { input: 0, output: 0, cost: 0, to: 0 })).toThrow(/no state 3/);
  });
});
