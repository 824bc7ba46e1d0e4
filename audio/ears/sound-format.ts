/** Samples a second of all sound inside the ears. The command model was built for it; see its feature settings. */
export const EARS_RATE_HZ = 16_000;

/**
 * Length of one block of sound handed along inside the ears, milliseconds. What is decided in a block waits for its end: with
 * 100 ms the meaning of an utterance came 90 ms later than it had to.
 */
export const BLOCK_MS = 20;

/** Samples in one block. */
export const BLOCK_SAMPLES = (EARS_RATE_HZ * BLOCK_MS) / 1000;

/** Length of the sound whose loudness is taken at once, milliseconds: a block is shorter than a period of an idling engine. */
export const LEVEL_MS = 100;

/** Samples in it. */
export const LEVEL_SAMPLES = (EARS_RATE_HZ * LEVEL_MS) / 1000;

/** A length in samples at the ears' rate as milliseconds. */
export function samplesToMs(samples: number): number {
  return (samples * 1000) / EARS_RATE_HZ;
}

/** Milliseconds as a whole number of samples at the ears' rate. */
export function msToSamples(ms: number): number {
  return Math.round((ms * EARS_RATE_HZ) / 1000);
}
