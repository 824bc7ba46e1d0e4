/**
 * The decoding graph: a star of words. From the resting state every word is a chain of phones back to it, its label on
 * the first arc, so that a word that is not in the active list costs nothing; silence and noise may stand between.
 */

import { minimalAutomaton } from './minimal-automaton.ts';
import { Graph } from './openfst-vector.ts';
import type { InventoryPhone } from './phone-inventory.ts';
import { type PathStep, pause } from './phone-paths.ts';
import type { StateTransitions } from './transition-model.ts';

/** Costs are natural logarithms before the acoustic scale: larger is rarer. */
export interface GraphTuning {
  /** Weight of the phones' own transition probabilities; Kaldi's usual value is 0.1 where acoustics are scaled by 0.1. */
  readonly transitionScale: number;
  readonly silenceCost: number;
  readonly noiseCost: number;
  /** Going on without any silence or noise. */
  readonly noSilenceCost: number;
  /** A pause inside a phrase. */
  readonly pauseCost: number;
  /** Each word, so that one long phrase is preferred to several short ones. */
  readonly wordCost: number;
  readonly unknownCost: number;
  /** Taken off for every frame of unknown speech: how much better than any speech a phrase must fit, in noise. */
  readonly unknownFrameBonus: number;
  /** The same where the speech is clear: there a phrase that was really said fits far better. */
  readonly clearUnknownFrameBonus: number;
}

export interface GraphParts {
  readonly words: readonly { readonly wordId: number; readonly paths: readonly (readonly PathStep[])[] }[];
  readonly silence: InventoryPhone;
  readonly noise: InventoryPhone;
  /** Silence inside a word of the graph. */
  readonly pauseSilence: InventoryPhone;
  readonly unknown: {
    readonly wordId: number;
    readonly clearWordId: number;
    readonly speech: InventoryPhone;
  };
}

export function buildWordGraph(
  parts: GraphParts,
  transitions: readonly (readonly StateTransitions[])[],
  tuning: GraphTuning,
): Graph {
  const graph = new Graph();
  const resting = 0;
  const afterWord = graph.addState();
  graph.setFinal(resting, 0);
  graph.setFinal(afterWord, 0);

  /** A phone's chain: an arc into each state, on which the state's own loop sits. */
  const addPhone = (
    from: number,
    phone: InventoryPhone,
    wordId: number,
    to: number,
    cost: number,
    frameCost = 0,
  ) => {
    const states = transitions[phone.id - 1];
    if (!states) throw new Error(`Phone ${phone.id} has no transitions.`);
    let current = from;
    states.forEach((state, i) => {
      const next = graph.addState();
      graph.addArc(current, {
        input: state.goOnId,
        output: i === 0 ? wordId : 0,
        cost: -state.goOnLog * tuning.transitionScale + frameCost + (i === 0 ? cost : 0),
        to: next,
      });
      graph.addArc(next, {
        input: state.stayId,
        output: 0,
        cost: -state.stayLog * tuning.transitionScale + frameCost,
        to: next,
      });
      current = next;
    });
    graph.addArc(current, { input: 0, output: 0, cost: 0, to });
  };

  graph.addArc(afterWord, { input: 0, output: 0, cost: tuning.noSilenceCost, to: resting });
  for (const [phone, cost] of [
    [parts.silence, tuning.silenceCost],
    [parts.noise, tuning.noiseCost],
  ] as const) {
    addPhone(afterWord, phone, 0, resting, cost);
    addPhone(resting, phone, 0, resting, cost);
  }

  for (const { wordId, paths } of parts.words) {
    const automaton = minimalAutomaton(paths, (step) => (step === pause ? pause : String(step.id)));
    const start = automaton.length - 1;
    const places = automaton.map(({ edges }, i) =>
      i === start ? resting : edges.length === 0 ? afterWord : graph.addState(),
    );
    automaton.forEach(({ edges, accepts }, i) => {
      const place = places[i] ?? resting;
      if (accepts && edges.length > 0) graph.addArc(place, { input: 0, output: 0, cost: 0, to: afterWord });
      for (const { step, to } of edges) {
        const target = places[to] ?? afterWord;
        if (step === pause) {
          graph.addArc(place, { input: 0, output: 0, cost: 0, to: target });
          addPhone(place, parts.pauseSilence, 0, target, tuning.pauseCost);
        } else {
          addPhone(place, step, i === start ? wordId : 0, target, i === start ? tuning.wordCost : 0);
        }
      }
    });
  }

  for (const [wordId, frameBonus] of [
    [parts.unknown.wordId, tuning.unknownFrameBonus],
    [parts.unknown.clearWordId, tuning.clearUnknownFrameBonus],
  ] as const) {
    addPhone(resting, parts.unknown.speech, wordId, afterWord, tuning.unknownCost, -frameBonus);
  }
  return graph;
}
