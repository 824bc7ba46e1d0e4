import { builtModel } from '../command-model/built.ts';
import { recogniserTimeFactor } from '../command-model/decode-protocol.ts';
import type { ModelArchive } from './model-file.ts';

/** A speech model and how it is listened with. */
export interface SpeechModel {
  readonly archive: ModelArchive;
  /** What one word of its graph is: a whole phrase of the grammar, or an ordinary word. */
  readonly graph: 'phrases' | 'words';
  /** What it is given: an utterance cleaned of the room and brought to one spectrum, or the plain sound. */
  readonly frontEnd: 'cleaned' | 'plain';
  /**
   * What the library's word times are multiplied by. It takes every third frame as given; a model that scores every frame
   * needs 1/3.
   */
  readonly timeScale: number;
}

/** The model that this build of the app carries. @param folderUrl where it is served, ending in a slash */
export function bundledModel(folderUrl: string): SpeechModel {
  const { fileName, bytes, sha256 } = builtModel;
  return {
    archive: { url: folderUrl + fileName, bytes, sha256 },
    graph: 'phrases',
    frontEnd: 'cleaned',
    timeScale: recogniserTimeFactor,
  };
}
