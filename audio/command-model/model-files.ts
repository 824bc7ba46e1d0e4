/**
 * The files of a model in Vosk's layout, made from the published acoustic parameters and our vocabulary.
 * Source of the layout: `Model::ConfigureV2` and `Model::ReadDataFiles` in src/model.cc of vosk-api (Apache 2.0).
 */
import { UNKNOWN_WORD } from '../../grammar/compile.ts';
import type { AcousticSource } from './acoustic-source.ts';
import { CLEAR_UNKNOWN_WORD, DECOY_WORD } from './decode-protocol.ts';
import { decoyPronunciations, isShort } from './decoys.ts';
import { KaldiWriter } from './kaldi-binary.ts';
import { type Arc, Graph, writeVectorGraph } from './openfst-vector.ts';
import { layOutOutputs } from './output-layout.ts';
import { PhoneInventory } from './phone-inventory.ts';
import { phonePaths } from './phone-paths.ts';
import { outputOfSlot, writeScoringNetwork } from './scoring-network.ts';
import { tieSenones } from './senone-tying.ts';
import type { ArchiveFile } from './tar-archive.ts';
import {
  numberTransitions,
  type PhoneChain,
  statesPerPhone,
  writeTransitionModel,
} from './transition-model.ts';
import type { DecodingTuning, ModelTuning } from './tuning.ts';
import type { GraphWord } from './vocabulary.ts';
import { buildWordGraph, type GraphTuning } from './word-graph.ts';

/** Matrices of mixture weights a stream; more saves padding but each call has a cost. */
const groupLimit = 6;

/** Any speech is what it is for as long as it lasts; the graph's costs decide. */
const anySpeechStayProbability = 0.7;

export interface ModelFiles {
  readonly files: readonly ArchiveFile[];
  /** For the builder's report. */
  readonly counts: Readonly<Record<'words' | 'phones' | 'senones' | 'slots' | 'states', number>>;
}

export function modelFiles(
  source: AcousticSource,
  vocabulary: readonly GraphWord[],
  tuning: ModelTuning,
): ModelFiles {
  const inventory = new PhoneInventory();
  const base = (name: string) => source.phones.baseModel(baseNumber(source, name));
  const silence = inventory.modelled(base('SIL'), 'nonword');
  const noise = inventory.modelled(base('+NSN+'), 'nonword');
  const pauseSilence = inventory.modelled(base('SIL'), 'internal');

  const wordIds = new Map(
    [UNKNOWN_WORD, CLEAR_UNKNOWN_WORD, DECOY_WORD, ...vocabulary.map(({ label }) => label)].map(
      (label, i) => [label, i + 1],
    ),
  );
  const wordId = (label: string) => wordIds.get(label) ?? 0;
  const unknown = [
    {
      wordId: wordId(UNKNOWN_WORD),
      speech: inventory.anything('anySpeech', 'singleton'),
      tuning: tuning.graph.unknown,
    },
    {
      wordId: wordId(CLEAR_UNKNOWN_WORD),
      speech: inventory.anything('anySenone', 'singleton'),
      tuning: tuning.graph.clearUnknown,
    },
  ];
  const phrases = vocabulary.map((word) => ({
    wordId: wordId(word.label),
    cost: costOf(word, tuning.graph),
    paths: phonePaths(word, source.phones, inventory),
  }));
  // One by one: each pays the same in all, however long it is.
  const decoys = decoyPronunciations(vocabulary, source.dictionary).map((way) => ({
    wordId: wordId(DECOY_WORD),
    cost: tuning.graph.decoyCost,
    paths: phonePaths({ label: DECOY_WORD, spoken: [[way]], isEager: false }, source.phones, inventory),
  }));
  const words = [...phrases, ...decoys];

  const phones = inventory.all();
  const usedSenones = new Set(
    phones.flatMap(({ sound }) =>
      sound.kind === 'modelled' ? source.phones.senones(sound.senoneSequence) : [],
    ),
  );
  const tied = tieSenones(
    usedSenones,
    source.phones.baseOfSenone,
    source.mixtureWeights,
    tuning.scoring.senoneLimit,
  );
  const layout = layOutOutputs(tied.all, source.phones.baseOfSenone, groupLimit);
  const chains = phones.map(({ id, sound }): PhoneChain => {
    if (sound.kind !== 'modelled') {
      const pdfId = outputOfSlot(layout.slotCount + (sound.kind === 'anySpeech' ? 0 : 1));
      return {
        phoneId: id,
        pdfIds: Array.from({ length: statesPerPhone }, () => pdfId),
        stayProbabilities: Array.from({ length: statesPerPhone }, () => anySpeechStayProbability),
      };
    }
    const stay = source.stayProbabilities[sound.transitionMatrix];
    if (!stay) throw new Error(`The acoustic model has no transition matrix ${sound.transitionMatrix}.`);
    return {
      phoneId: id,
      pdfIds: source.phones
        .senones(sound.senoneSequence)
        .map((senone) => outputOfSlot(layout.slotOfSenone.get(tied.representative(senone)) ?? Number.NaN)),
      stayProbabilities: stay,
    };
  });
  const transitions = numberTransitions(chains);
  const graph = buildWordGraph({ words, silence, noise, pauseSilence, unknown }, transitions, tuning.graph);

  const acoustics = new KaldiWriter().binaryMark();
  writeTransitionModel(acoustics, chains);
  writeScoringNetwork(acoustics, source, layout, tied, tuning.scoring);

  const text = (path: string, lines: readonly string[]): ArchiveFile => ({
    path,
    content: new TextEncoder().encode(`${lines.join('\n')}\n`),
  });
  const unusedTransition = 2 * 3 * phones.length + 10;
  return {
    files: [
      { path: 'model/am/final.mdl', content: acoustics.finish() },
      text('model/conf/mfcc.conf', featureOptions),
      text('model/conf/model.conf', decodingOptions(tuning.decoding, [silence.id, noise.id])),
      { path: 'model/graph/HCLr.fst', content: writeVectorGraph(graph) },
      { path: 'model/graph/Gr.fst', content: writeVectorGraph(anyWord([...wordIds.values()])) },
      text('model/graph/disambig_tid.int', [String(unusedTransition)]),
      text('model/graph/words.txt', [
        '<eps> 0',
        ...[...wordIds].map(([label, id]) => `${label} ${id}`),
        `#0 ${wordIds.size + 1}`,
      ]),
      text(
        'model/graph/phones/word_boundary.int',
        phones.map(({ id, place }) => `${id} ${place}`),
      ),
    ],
    counts: {
      words: wordIds.size,
      phones: phones.length,
      senones: usedSenones.size,
      slots: layout.slotCount,
      states: graph.stateCount,
    },
  };
}

function costOf(word: GraphWord, tuning: GraphTuning): number {
  if (word.number === 'digit') return tuning.digitCost;
  if (word.number === 'digitLike') return tuning.digitLikeCost;
  return word.isEager || isShort(word) ? tuning.eagerWordCost : tuning.wordCost;
}

function baseNumber(source: AcousticSource, name: string): number {
  const number = source.phones.baseNumber(name);
  if (number === undefined) throw new Error(`The acoustic model has no phone ${name}.`);
  return number;
}

/** Kaldi's MFCC options that give Sphinx's cepstra up to constants that mean normalisation removes (feat.params). */
const featureOptions = [
  '--use-energy=false',
  '--sample-frequency=16000',
  '--num-mel-bins=25',
  '--num-ceps=13',
  '--low-freq=130',
  '--high-freq=6800',
  '--cepstral-lifter=22',
  '--window-type=hamming',
  '--frame-length=25.625',
  '--frame-shift=10',
  '--remove-dc-offset=false',
  '--preemphasis-coefficient=0.97',
  '--dither=0.0',
];

/** The ends of utterances are found before the recogniser (decode-protocol.ts); its own rules must not cut phrases. */
const neverSeconds = 1000;

function decodingOptions(tuning: DecodingTuning, silencePhones: readonly number[]): readonly string[] {
  return [
    `--min-active=${tuning.minActive}`,
    `--max-active=${tuning.maxActive}`,
    `--beam=${tuning.beam}`,
    `--lattice-beam=${tuning.latticeBeam}`,
    `--acoustic-scale=${tuning.acousticScale}`,
    '--frame-subsampling-factor=1',
    `--endpoint.silence-phones=${silencePhones.join(':')}`,
    ...[1, 2, 3, 4].map((rule) => `--endpoint.rule${rule}.min-trailing-silence=${neverSeconds}`),
    `--endpoint.rule5.min-utterance-length=${neverSeconds}`,
  ];
}

/** The language of a recogniser without a list of its own: any words in any order. */
function anyWord(wordIds: readonly number[]): Graph {
  const graph = new Graph();
  graph.setFinal(0, 0);
  const cost = Math.log(wordIds.length);
  for (const id of wordIds) graph.addArc(0, { input: id, output: id, cost, to: 0 } satisfies Arc);
  return graph;
}
