/** Everything about the model that was chosen by measurement; `npm run bench` shows what it gives. */
import type { ScoringTuning } from './scoring-network.ts';
import type { GraphTuning } from './word-graph.ts';

export interface DecodingTuning {
  /** Weight of the acoustics against the graph's costs. */
  readonly acousticScale: number;
  readonly beam: number;
  readonly latticeBeam: number;
  readonly maxActive: number;
  readonly minActive: number;
}

export interface ModelTuning {
  readonly scoring: ScoringTuning;
  readonly graph: GraphTuning;
  readonly decoding: DecodingTuning;
}

export const modelTuning: ModelTuning = {
  scoring: { shareFloor: 1e-5, varianceFloor: 1e-4, everyFrames: 2, senoneLimit: 1000 },
  graph: {
    transitionScale: 0.1,
    silenceCost: 0.7,
    noiseCost: 3,
    noSilenceCost: 0.7,
    pauseCost: 1.5,
    wordCost: 8,
    eagerWordCost: 4,
    digitCost: 1,
    digitLikeCost: 6,
    decoyCost: 7,
    unknown: { cost: 16, frameBonus: 0.28 },
    clearUnknown: { cost: 2, frameBonus: 0.08 },
  },
  decoding: {
    acousticScale: 0.12,
    beam: 12,
    latticeBeam: 2.5,
    maxActive: 2000,
    minActive: 200,
  },
};
