import type { SpeechModel } from '../ears/speech-model.ts';

/** A speech model as its makers publish it: a zip with one folder in Vosk's layout. */
export interface PublishedArchive {
  readonly name: string;
  readonly bytes: number;
  /** SHA-256 of the zip, 64 lower-case hexadecimal digits. */
  readonly sha256: string;
  /** What its network was trained to hear. */
  readonly frontEnd: SpeechModel['frontEnd'];
}

/**
 * The public small English model (Apache 2.0). Its network was trained on sound as microphones give it and follows speaker
 * and room by itself, so the cleaning that the bundled model needs would only be strange to it.
 *
 * Size and hash are as a mirror publishes them: to be verified at the first real download, which could not be made where
 * this was written.
 */
export const SMALL_ENGLISH: PublishedArchive = {
  name: 'vosk-model-small-en-us-0.15.zip',
  bytes: 41_205_931,
  sha256: '30f26242c4eb449f948e42cb302dd7a686cb29a3423a8367f99ff41780942498',
  frontEnd: 'plain',
};
