/** Loads the model that ships, or one made of what the grammar and the tuning are now. */
import { readFileSync } from 'node:fs';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import { builtModel } from '../../audio/command-model/built.ts';
import { grammarVocabulary } from '../../audio/command-model/grammar-vocabulary.ts';
import { packModel, vocabularyHash } from '../../audio/command-model/packed-model.ts';
import { modelTuning } from '../../audio/command-model/tuning.ts';
import { type LoadedModel, loadVoskModel } from './vosk-in-node.ts';

const vocabulary = grammarVocabulary();

/** @throws when the grammar has changed since the model was built: it would be deaf to what is new */
export function bundledArchive(): Uint8Array {
  if (vocabularyHash(vocabulary) !== builtModel.vocabularySha256)
    throw new Error('The grammar has changed since the speech model was built: npm run model');
  return readFileSync(new URL(`../../public/model/${builtModel.fileName}`, import.meta.url));
}

/** Builds the model anew, without keeping it. */
export function currentArchive(): Uint8Array {
  return packModel(readAcousticSource(), vocabulary, modelTuning).bytes;
}

export function loadBundledModel(): Promise<LoadedModel> {
  return loadVoskModel(bundledArchive());
}
