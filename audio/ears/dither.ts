/** Peak of the dither: one step of 16-bit sound. Loud enough against digital silence, far under any room. */
const STEP = 1 / 32_768;

/**
 * Adds triangular noise of one 16-bit step to a block, in place. Browsers' noise suppression and muted inputs give exact
 * zeros, whose logarithm poisons the recogniser's running mean for seconds.
 * @param random uniform in [0, 1); given so that tests are repeatable
 */
export function addDither(samples: Float32Array, random: () => number = Math.random): void {
  for (let i = 0; i < samples.length; i += 1) {
    samples[i] = (samples[i] as number) + (random() - random()) * STEP;
  }
}
