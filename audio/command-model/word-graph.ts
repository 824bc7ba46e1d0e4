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
  /**
   * Each word: how much better in all than unknown speech it must fit, however short it is. Several short ones pay it
   * several times.
   */
  readonly wordCost: number;
  /** The same of a word that is taken on less evidence, or is short and has decoys beside it. */
  readonly eagerWordCost: number;
  /**
   * The same of a number of one digit, and of the numbers that are easily taken for one: of 76 single words by people 59 are right
   * and 1 is wrong with 1 and 6, 50 and 10 where both cost what an eager word does (beside an engine 60 and 3, 47 and 8).
   */
  readonly digitCost: number;
  readonly digitLikeCost: number;
  /** The same of a decoy. */
  readonly decoyCost: number;
  /** Unknown speech in noise, and where the speech is clear: there a phrase that was really said fits far better. */
  readonly unknown: UnknownTuning;
  readonly clearUnknown: UnknownTuning;
}

export interface UnknownTuning {
  readonly cost: number;
  /** Taken off for every frame: how much better than it a phrase must fit in each. */
  readonly frameBonus: number;
}

export interface GraphParts {
  readonly words: readonly {
    readonly wordId: number;
    /** How much better in all than unknown speech it must fit. */
    readonly cost: number;
    readonly paths: readonly (readonly PathStep[])[];
  }[];
  readonly silence: InventoryPhone;
  readonly noise: InventoryPhone;
  /** Silence inside a word of the graph. */
  readonly pauseSilence: InventoryPhone;
  readonly unknown: readonly {
    readonly wordId: number;
    readonly speech: InventoryPhone;
    readonly tuning: UnknownTuning;
  }[];
}

/** Costs are kept to this part: finer steps change nothing and would not compress. */
const costStep = 1 / 128;

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

  const rounded = (cost: number) => Math.round(cost / costStep) * costStep;

  /** A phone's chain: an arc into each state, on which the state's own loop sits. */
  const addPhone = (
    from: number,
    phone: InventoryPhone,
    wordId: number,
    to: number,
    cost: number,
    { frameCost = 0, exitCost = 0 } = {},
  ) => {
    const states = transitions[phone.id - 1];
    if (!states) throw new Error(`Phone ${phone.id} has no transitions.`);
    let current = from;
    states.forEach((state, i) => {
      const next = graph.addState();
      graph.addArc(current, {
        input: state.goOnId,
        output: i === 0 ? wordId : 0,
        cost: rounded(-state.goOnLog * tuning.transitionScale + frameCost + (i === 0 ? cost : 0)),
        to: next,
      });
      graph.addArc(next, {
        input: state.stayId,
        output: 0,
        cost: rounded(-state.stayLog * tuning.transitionScale + frameCost),
        to: next,
      });
      current = next;
    });
    graph.addArc(current, { input: 0, output: 0, cost: exitCost, to });
  };

  graph.addArc(afterWord, { input: 0, output: 0, cost: tuning.noSilenceCost, to: resting });
  for (const [phone, cost] of [
    [parts.silence, tuning.silenceCost],
    [parts.noise, tuning.noiseCost],
  ] as const) {
    addPhone(afterWord, phone, 0, resting, cost);
    addPhone(resting, phone, 0, resting, cost);
  }

  for (const { wordId, cost, paths } of parts.words) {
    // In equal parts, so that no single step falls out of the decoder's beam.
    const phoneCount = Math.min(...paths.map((path) => path.filter((step) => step !== pause).length));
    const phoneCost = cost / phoneCount;
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
          addPhone(place, step, i === start ? wordId : 0, target, phoneCost);
        }
      }
    });
  }

  for (const { wordId, speech, tuning: unknown } of parts.unknown) {
    addPhone(resting, speech, wordId, afterWord, 0, {
      frameCost: -unknown.frameBonus,
      exitCost: unknown.cost,
    });
  }
  return graph;
}
