/** The model as one file: the same bytes, and so the same name, wherever it is made. Node only. */
import { createHash } from 'node:crypto';
import { gzipSync } from 'fflate';
import type { AcousticSource } from './acoustic-source.ts';
import { type ModelFiles, modelFiles } from './model-files.ts';
import { writeTar } from './tar-archive.ts';
import type { ModelTuning } from './tuning.ts';
import { graphVocabulary, type VocabularySource } from './vocabulary.ts';

export interface PackedModel {
  /** Not `.gz`: servers would announce a content encoding and browsers unpack it. */
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly counts: ModelFiles['counts'];
}

export function packModel(
  source: AcousticSource,
  vocabulary: VocabularySource,
  tuning: ModelTuning,
): PackedModel {
  const { files, counts } = modelFiles(source, graphVocabulary(vocabulary, source.dictionary), tuning);
  const bytes = gzipSync(writeTar(files), { level: 9, mtime: 0 });
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return { fileName: `commands-${sha256.slice(0, 8)}.model`, bytes, sha256, counts };
}

/** Changes whenever a phrase, a word or a pronunciation does, whatever their order. */
export function vocabularyHash(vocabulary: VocabularySource): string {
  const entries = Object.entries(vocabulary.pronunciations).sort(([a], [b]) => (a < b ? -1 : 1));
  const text = JSON.stringify([
    [...vocabulary.phrases].sort(),
    [...vocabulary.words].sort(),
    [...vocabulary.eager].sort(),
    [...vocabulary.digits].sort(),
    [...vocabulary.digitLike].sort(),
    entries,
  ]);
  return createHash('sha256').update(text).digest('hex');
}
