/** Loads the model that ships. */
import { readFileSync } from 'node:fs';
import { builtModel } from '../../audio/command-model/built.ts';
import { type LoadedModel, loadVoskModel } from './vosk-in-node.ts';

export function loadBundledModel(): Promise<LoadedModel> {
  return loadVoskModel(readFileSync(new URL(`../../public/model/${builtModel.fileName}`, import.meta.url)));
}
