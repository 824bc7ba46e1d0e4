/** Looks through a published archive, file by file, and says in one sentence what is wrong with it. */
import { unzipSync } from 'fflate';
import type { ArchiveFile } from '../command-model/tar-archive.ts';

export type UnzippedModel =
  /** Paths inside the model's folder, in order: `am/final.mdl`. */
  | { readonly ok: true; readonly files: readonly ArchiveFile[] }
  | { readonly ok: false; readonly sentence: string };

/** What the recogniser cannot do without. Source: Model::ConfigureV2 in src/model.cc of vosk-api (Apache 2.0). */
const NEEDED = ['am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf', 'graph/HCLr.fst', 'graph/Gr.fst'];

/** With a finished graph the recogniser ignores every list of words it is given. */
const FINISHED_GRAPH = 'graph/HCLG.fst';

/** Second passes that the recogniser of the app was built without; it stops where it finds them. */
const LEFT_OUT = /^(rnnlm|rescore)\//;

/** @param zip the whole archive, one folder with the model in it */
export function unzipModel(zip: Uint8Array): UnzippedModel {
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(zip);
  } catch {
    return { ok: false, sentence: 'It is not a zip archive.' };
  }
  const files = Object.entries(entries)
    .filter(([path]) => !path.endsWith('/'))
    .map(([path, content]) => ({ path: path.slice(path.indexOf('/') + 1), content }))
    .filter(({ path }) => !LEFT_OUT.test(path))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  const has = (path: string) => files.some((file) => file.path === path);
  const lacking = NEEDED.filter((path) => !has(path));
  if (lacking.length > 0) {
    return { ok: false, sentence: `It holds no usable speech model: ${lacking.join(', ')} is missing.` };
  }
  if (has(FINISHED_GRAPH)) {
    return { ok: false, sentence: 'Its graph is a finished one, which cannot be given a list of phrases.' };
  }
  return { ok: true, files };
}
