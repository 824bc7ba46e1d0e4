import { describe, expect, it } from 'vitest';
import type { Graph } from '../../../audio/command-model/openfst-vector.ts';
import type { InventoryPhone } from '../../../audio/command-model/phone-inventory.ts';
import { pause } from '../../../audio/command-model/phone-paths.ts';
import { buildWordGraph, type GraphTuning } from '../../../audio/command-model/word-graph.ts';

const phone = (id: number): InventoryPhone => ({
  id,
  place: 'internal',
  sound: { kind: 'modelled', senoneSequence: id, transitionMatrix: 0 },
});
const tuning: GraphTuning = {
  transitionScale: 0,
  silenceCost: 0.5,
  noiseCost: 1,
  noSilenceCost: 0.25,
  pauseCost: 1.5,
  wordCost: 12,
  eagerWordCost: 6,
  digitCost: 1,
  digitLikeCost: 8,
  decoyCost: 7,
  unknown: { cost: 16, frameBonus: 0.25 },
  clearUnknown: { cost: 2, frameBonus: 0.5 },
};
const free = { stayId: 1, goOnId: 2, stayLog: 0, goOnLog: 0 };
const transitions = Array.from({ length: 9 }, () => [free, free, free]);

const graph = buildWordGraph(
  {
    words: [
      { wordId: 1, cost: 12, paths: [[phone(1), phone(2), pause, phone(3)]] },
      { wordId: 2, cost: 6, paths: [[phone(4)]] },
    ],
    silence: phone(5),
    noise: phone(6),
    pauseSilence: phone(7),
    unknown: [
      { wordId: 3, speech: phone(8), tuning: tuning.unknown },
      { wordId: 4, speech: phone(9), tuning: tuning.clearUnknown },
    ],
  },
  transitions,
  tuning,
);

/** Least cost of a word from rest to behind it, each of its states taken for one frame. */
function costOf(graph: Graph, wordId: number): number {
  const afterWord = 1;
  const cheapest = (state: number): number =>
    state === afterWord
      ? 0
      : Math.min(
          ...graph
            .arcs(state)
            .filter(({ to }) => to !== state)
            .map(({ to, cost }) => cost + cheapest(to)),
        );
  return Math.min(
    ...graph
      .arcs(0)
      .filter(({ output }) => output === wordId)
      .map(({ to, cost }) => cost + cheapest(to)),
  );
}

describe('the graph of words', () => {
  it('charges a phrase its cost in all, and an eager one less', () => {
    expect(costOf(graph, 1)).toBeCloseTo(tuning.wordCost);
    expect(costOf(graph, 2)).toBeCloseTo(tuning.eagerWordCost, 1);
  });

  it('charges it in parts, so that no step falls out of the beam', () => {
    const first = graph.arcs(0).find(({ output }) => output === 1);
    expect(first?.cost).toBeCloseTo(tuning.wordCost / 3);
  });

  it('charges unknown speech its cost and gives back a part for every frame', () => {
    expect(costOf(graph, 3)).toBeCloseTo(tuning.unknown.cost - 3 * tuning.unknown.frameBonus);
    expect(costOf(graph, 4)).toBeCloseTo(tuning.clearUnknown.cost - 3 * tuning.clearUnknown.frameBonus);
  });
});
