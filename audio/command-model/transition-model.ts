/**
 * The Markov chains of the phones as Kaldi's TransitionModel: three states, each stays or goes on.
 * Source of the format: hmm/transition-model.cc and hmm/hmm-topology.cc of Kaldi (Apache 2.0).
 */
import type { KaldiWriter } from './kaldi-binary.ts';

export const statesPerPhone = 3;

/** The two arcs that leave one state of one phone. */
export interface StateTransitions {
  /** Kaldi's transition identifiers, from 1. */
  readonly stayId: number;
  readonly goOnId: number;
  /** Natural logarithms of their probabilities. */
  readonly stayLog: number;
  readonly goOnLog: number;
}

export interface PhoneChain {
  readonly phoneId: number;
  /** The network's output for each state. */
  readonly pdfIds: readonly number[];
  /** Probability of staying in each state one frame more. */
  readonly stayProbabilities: readonly number[];
}

/** No state is ever left for certain nor kept for certain. */
const leastProbability = 0.01;

/** Transitions of every chain, by place in `chains` and by state; `chains` must be numbered 1, 2, 3 ... */
export function numberTransitions(chains: readonly PhoneChain[]): readonly (readonly StateTransitions[])[] {
  let next = 1;
  return chains.map(({ stayProbabilities }) =>
    stayProbabilities.map((probability) => {
      const stay = Math.min(Math.max(probability, leastProbability), 1 - leastProbability);
      const stayId = next++;
      return { stayId, goOnId: next++, stayLog: Math.log(stay), goOnLog: Math.log(1 - stay) };
    }),
  );
}

export function writeTransitionModel(writer: KaldiWriter, chains: readonly PhoneChain[]): void {
  const phoneIds = chains.map(({ phoneId }) => phoneId);
  if (phoneIds.some((id, i) => id !== i + 1))
    throw new Error('Phones must be numbered 1, 2, 3 ... in order.');
  writer.token('<TransitionModel>').token('<Topology>');
  writer.int32Vector(phoneIds).int32Vector([-1, ...phoneIds.map(() => 0)]); // every phone has topology 0
  writer.int32(1).int32(statesPerPhone + 1);
  for (let state = 0; state < statesPerPhone; state++) {
    writer
      .int32(state)
      .int32(2)
      .int32(state)
      .float32(0.5)
      .int32(state + 1)
      .float32(0.5);
  }
  writer.int32(-1).int32(0).token('</Topology>');
  writer.token('<Triples>').int32(statesPerPhone * chains.length);
  for (const { phoneId, pdfIds } of chains) {
    pdfIds.forEach((pdfId, state) => {
      writer.int32(phoneId).int32(state).int32(pdfId);
    });
  }
  writer.token('</Triples>').token('<LogProbs>');
  const logs = numberTransitions(chains).flatMap((states) => states.flatMap((s) => [s.stayLog, s.goOnLog]));
  writer.vector([0, ...logs]); // identifier 0 is not used
  writer.token('</LogProbs>').token('</TransitionModel>');
}
