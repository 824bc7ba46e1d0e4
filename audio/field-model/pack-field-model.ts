/**
 * Turns a published speech model into one file that the app's loader takes, checked on the way. Node only.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'fflate';
import { type ArchiveFile, writeTar } from '../command-model/tar-archive.ts';
import { UNKNOWN } from '../ears/heard-words.ts';
import { type Coverage, coverageOf } from './coverage.ts';
import { type NumberedWord, outputSymbols, readWordsFile, writeWordsFile } from './graph-words.ts';
import { FIELD_MODEL_INDEX, type PackedFieldModel } from './packed-field-model.ts';
import type { PublishedArchive } from './published-archive.ts';
import { unzipModel } from './unzip-model.ts';

export type FieldModelOutcome =
  | { readonly ok: true; readonly packed: PackedFieldModel; readonly coverage: Coverage }
  /** One sentence that says what is wrong and what still works. */
  | { readonly ok: false; readonly sentence: string };

const STILL_WORKS = 'Nothing was changed: the app goes on with the speech model it has.';

/**
 * Checks a published archive on disk and writes it into a folder as the app's loader needs it, with a table of contents.
 * @param file the archive as it was downloaded
 * @param published what it has to be
 * @param folder where the app's build finds it; a field model packed before is replaced
 */
export function packFieldModel(file: string, published: PublishedArchive, folder: string): FieldModelOutcome {
  const refuse = (reason: string): FieldModelOutcome => ({ ok: false, sentence: `${reason} ${STILL_WORKS}` });
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (size === undefined) return refuse(`There is no file ${file}.`);
  if (size !== published.bytes) {
    return refuse(
      `${file} is not ${published.name}: it has ${size} bytes instead of ${published.bytes}. Download it again.`,
    );
  }
  const zip = readFileSync(file);
  if (sha256Of(zip) !== published.sha256) {
    return refuse(
      `${file} is not ${published.name}: its size is right but its SHA-256 is not. Download it again.`,
    );
  }
  const unzipped = unzipModel(zip);
  if (!unzipped.ok) return refuse(`${file} cannot be used. ${unzipped.sentence}`);
  let words: readonly NumberedWord[];
  try {
    words = wordsOf(unzipped.files);
  } catch (error) {
    return refuse(`${file} cannot be used. ${error instanceof Error ? error.message : String(error)}`);
  }
  const vocabulary = new Set(words.map(([word]) => word));
  if (!vocabulary.has(UNKNOWN)) {
    return refuse(
      `${file} cannot be used. Its graph has no word ${UNKNOWN}, by which other talk is told from answers.`,
    );
  }
  const coverage = coverageOf(vocabulary);
  const archive = gzipSync(writeTar(laidOut(unzipped.files, words)), { level: 6, mtime: 0 });
  const sha256 = sha256Of(archive);
  const packed: PackedFieldModel = {
    format: 1,
    fileName: `field-${sha256.slice(0, 8)}.model`,
    bytes: archive.length,
    sha256,
    frontEnd: published.frontEnd,
    timeScale: frameSubsampling(unzipped.files) / LIBRARY_SUBSAMPLING,
    taughtGaps: [...coverage.taughtGaps],
  };
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder)) if (old.startsWith('field-')) rmSync(join(folder, old));
  writeFileSync(join(folder, packed.fileName), archive);
  writeFileSync(join(folder, FIELD_MODEL_INDEX), `${JSON.stringify(packed, null, 2)}\n`);
  return { ok: true, packed, coverage };
}

function sha256Of(content: Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

const WORDS_FILE = 'graph/words.txt';

/** The words inside Gr.fst are the ones the recogniser goes by; words.txt counts only where there are none. */
function wordsOf(files: readonly ArchiveFile[]): readonly NumberedWord[] {
  const graph = contentOf(files, 'graph/Gr.fst');
  const words =
    (graph && outputSymbols(graph, 'graph/Gr.fst')) ??
    readWordsFile(contentOf(files, WORDS_FILE) ?? new Uint8Array());
  if (words.length === 0) throw new Error('Neither graph/Gr.fst nor graph/words.txt names its words.');
  return words;
}

/** The files under one folder, with the words written out: the ears read there what a model knows. */
function laidOut(files: readonly ArchiveFile[], words: readonly NumberedWord[]): readonly ArchiveFile[] {
  const others = files.filter(({ path }) => path !== WORDS_FILE);
  return [...others, { path: WORDS_FILE, content: writeWordsFile(words) }].map(({ path, content }) => ({
    path: `model/${path}`,
    content,
  }));
}

/** The recogniser's library counts this many frames to a step in its word times. */
const LIBRARY_SUBSAMPLING = 3;

/** Frames to a step of the network, as model.conf says; Kaldi's default is 1. */
function frameSubsampling(files: readonly ArchiveFile[]): number {
  const options = new TextDecoder().decode(contentOf(files, 'conf/model.conf'));
  return Number(/^\s*--frame-subsampling-factor=(\d+)/m.exec(options)?.[1] ?? 1);
}

function contentOf(files: readonly ArchiveFile[], path: string): Uint8Array | undefined {
  return files.find((file) => file.path === path)?.content;
}
