/**
 * A stand-in for the public small English model, which cannot be had where these tests run: the same layout, with the
 * words inside Gr.fst and no words.txt, made by the project's own builder. Its graph knows ordinary words, and lacks
 * some that the real one may well lack too.
 */
import { createHash } from 'node:crypto';
import { zipSync } from 'fflate';
import { readAcousticSource } from '../../../audio/command-model/acoustic-source.ts';
import { CLEAR_UNKNOWN_WORD, DECOY_WORD } from '../../../audio/command-model/decode-protocol.ts';
import { modelFiles } from '../../../audio/command-model/model-files.ts';
import { modelTuning } from '../../../audio/command-model/tuning.ts';
import { graphVocabulary } from '../../../audio/command-model/vocabulary.ts';
import { type NumberedWord, readWordsFile } from '../../../audio/field-model/graph-words.ts';
import type { PublishedArchive } from '../../../audio/field-model/published-archive.ts';
import { graphPhrases, graphWords } from '../../../grammar/lexicon.ts';
import { pronunciations } from '../../../grammar/pronunciations.ts';

/** Words that the stand-in does not know. */
export const LACKING = ['billhook', 'rethread', 'thirtysecond', 'thirtyseconds', 'unthreaded'];

const TOP_FOLDER = 'vosk-model-small-en-us-0.15';

/** The files of the stand-in by their path inside its folder, as its zip holds them. */
export function standInFiles(): Readonly<Record<string, Uint8Array>> {
  const said = [...graphPhrases(), ...graphWords()].flatMap((phrase) => phrase.split(' '));
  const words = [...new Set([...said, 'not', 'no', 'never', "don't"])].filter(
    (word) => !LACKING.includes(word),
  );
  const source = readAcousticSource();
  const { files } = modelFiles(
    source,
    graphVocabulary(
      { phrases: [], words, eager: words, digits: [], digitLike: [], pronunciations },
      source.dictionary,
    ),
    // A phrase is many words here: each of them must not pay what a whole phrase does.
    {
      ...modelTuning,
      graph: { ...modelTuning.graph, eagerWordCost: 2, unknown: { cost: 4, frameBonus: 0.26 } },
    },
  );
  const byPath = Object.fromEntries(files.map(({ path, content }) => [path.replace('model/', ''), content]));
  const { 'graph/words.txt': wordsFile, 'graph/Gr.fst': graph, ...others } = byPath;
  const numbered = readWordsFile(wordsFile ?? new Uint8Array()).filter(
    ([word]) => word !== CLEAR_UNKNOWN_WORD && word !== DECOY_WORD,
  );
  return {
    README: new TextEncoder().encode('A stand-in for tests.\n'),
    ...others,
    'graph/Gr.fst': withOutputSymbols(graph ?? new Uint8Array(), numbered),
  };
}

/** A zip as its makers would publish it, and what it then has to be. */
export function zipped(files: Readonly<Record<string, Uint8Array>>): {
  readonly zip: Uint8Array;
  readonly published: PublishedArchive;
} {
  const inFolder = Object.entries(files).map(
    ([path, content]) => [`${TOP_FOLDER}/${path}`, content] as const,
  );
  const zip = zipSync(Object.fromEntries(inFolder), { level: 1, mtime: '1980-01-01' });
  const sha256 = createHash('sha256').update(zip).digest('hex');
  // Unlike the real one it is made of the bundled model's sounds, and wants them cleaned as that one does.
  return { zip, published: { name: `${TOP_FOLDER}.zip`, bytes: zip.length, sha256, frontEnd: 'cleaned' } };
}

/** Puts a symbol table between the header and the states of a graph. Source: as in graph-words.ts. */
export function withOutputSymbols(graph: Uint8Array, words: readonly NumberedWord[]): Uint8Array {
  const view = new DataView(graph.buffer, graph.byteOffset, graph.byteLength);
  const typeLength = view.getInt32(4, true);
  const arcTypeLength = view.getInt32(8 + typeLength, true);
  const flagsAt = 4 + 4 + typeLength + 4 + arcTypeLength + 4;
  const headerEnd = flagsAt + 4 + 4 * 8;
  const int32 = (value: number) => new Uint8Array(Int32Array.of(value).buffer);
  const int64 = (value: number) => new Uint8Array(BigInt64Array.of(BigInt(value)).buffer);
  const text = (value: string) => {
    const bytes = new TextEncoder().encode(value);
    return [int32(bytes.length), bytes];
  };
  const header = graph.slice(0, headerEnd);
  new DataView(header.buffer).setInt32(flagsAt, 2, true);
  const nextFree = Math.max(...words.map(([, id]) => id)) + 1;
  const parts = [
    header,
    int32(2125658996),
    ...text('lgraph/words.txt'),
    int64(nextFree),
    int64(words.length),
    ...words.flatMap(([word, id]) => [...text(word), int64(id)]),
    graph.slice(headerEnd),
  ];
  return new Uint8Array(Buffer.concat(parts));
}
