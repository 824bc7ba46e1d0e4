/** Gathers the published acoustic model and dictionary from where Debian's package puts them. Node only. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Pronunciation, readDictionary } from './sphinx-dictionary.ts';
import { type GaussianParameters, readGaussianParameters } from './sphinx-gaussians.ts';
import { type MixtureWeights, readMixtureWeights } from './sphinx-mixture-weights.ts';
import { type PhoneDefinitions, readPhoneDefinitions } from './sphinx-phone-definitions.ts';
import { readStayProbabilities, type StayProbabilities } from './sphinx-transitions.ts';

/** The folder of Debian's package `pocketsphinx-en-us`. */
export const debianModelFolder = '/usr/share/pocketsphinx/model/en-us';

/** CMU Sphinx's US-English acoustic model, phonetically tied: one codebook of Gaussians a base phone. */
export interface AcousticSource {
  readonly means: GaussianParameters;
  readonly variances: GaussianParameters;
  readonly mixtureWeights: MixtureWeights;
  readonly stayProbabilities: StayProbabilities;
  readonly phones: PhoneDefinitions;
  readonly dictionary: ReadonlyMap<string, readonly Pronunciation[]>;
  /** The cepstral mean (13 values) that decoding starts from, before it has heard the room. */
  readonly startingMean: readonly number[];
}

export function readAcousticSource(folder = debianModelFolder): AcousticSource {
  const acoustic = join(folder, 'en-us');
  if (!existsSync(join(acoustic, 'mdef'))) {
    throw new Error(
      `The CMU acoustic model is not in ${folder}: install Debian's package pocketsphinx-en-us and run this again.`,
    );
  }
  const read = (name: string) => new Uint8Array(readFileSync(join(acoustic, name)));
  const means = readGaussianParameters(read('means'), 'means');
  return {
    means,
    variances: readGaussianParameters(read('variances'), 'variances'),
    mixtureWeights: readMixtureWeights(read('sendump'), 'sendump', means.streamLengths.length),
    stayProbabilities: readStayProbabilities(read('transition_matrices'), 'transition_matrices'),
    phones: readPhoneDefinitions(read('mdef'), 'mdef'),
    dictionary: readDictionary(readFileSync(join(folder, 'cmudict-en-us.dict'), 'utf8')),
    startingMean: readStartingMean(readFileSync(join(acoustic, 'feat.params'), 'utf8')),
  };
}

/** The values of `-cmninit` in a Sphinx `feat.params` file. */
export function readStartingMean(featureParameters: string): readonly number[] {
  const values = /^-cmninit\s+(\S+)/m.exec(featureParameters)?.[1]?.split(',').map(Number);
  if (values?.length !== 13 || values.some(Number.isNaN)) {
    throw new Error('feat.params has no line -cmninit with 13 numbers.');
  }
  return values;
}
