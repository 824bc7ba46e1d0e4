import createModule, { type RnnoiseModule } from '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js';

/**
 * RNNoise: a small recurrent network that turns each band of the sound down by as much as there is noise in it (J.-M. Valin,
 * "A Hybrid DSP/Deep Learning Approach to Real-Time Full-Band Speech Enhancement", IEEE MMSP 2018). Frames are of 10 ms.
 */

export const RNNOISE_RATE_HZ = 48_000;
export const RNNOISE_FRAME_SAMPLES = 480;

/** What comes out is this much later than what went in, in samples at its rate: 20 ms. Measured by correlation. */
export const RNNOISE_DELAY_SAMPLES = 960;

/** It was trained on sound in the range of 16-bit integers. */
const FULL_SCALE = 32_768;

/** Loaded with the first stream, once for all of them. */
let loaded: RnnoiseModule | undefined;

/** One stream of sound. Push its frames in order, and close it at the end. */
export class Rnnoise {
  readonly #module: RnnoiseModule;
  readonly #state: number;
  readonly #frame: number;

  constructor() {
    loaded ??= createModule();
    this.#module = loaded;
    this.#state = this.#module._rnnoise_create(0);
    this.#frame = this.#module._malloc(RNNOISE_FRAME_SAMPLES * Float32Array.BYTES_PER_ELEMENT);
  }

  /**
   * Takes the noise out of a frame, in place.
   * @param frame {@link RNNOISE_FRAME_SAMPLES} samples at {@link RNNOISE_RATE_HZ}, -1 to 1
   */
  clean(frame: Float32Array): void {
    const at = this.#frame / Float32Array.BYTES_PER_ELEMENT;
    const memory = this.#module.HEAPF32;
    for (let i = 0; i < RNNOISE_FRAME_SAMPLES; i += 1) memory[at + i] = FULL_SCALE * (frame[i] as number);
    this.#module._rnnoise_process_frame(this.#state, this.#frame, this.#frame);
    const cleaned = this.#module.HEAPF32;
    for (let i = 0; i < RNNOISE_FRAME_SAMPLES; i += 1) frame[i] = (cleaned[at + i] as number) / FULL_SCALE;
  }

  /** Frees its memory; it takes no more frames. */
  close(): void {
    this.#module._free(this.#frame);
    this.#module._rnnoise_destroy(this.#state);
  }
}
