import { Cutter } from './cutter.ts';
import { addDither } from './dither.ts';
import { joined } from './joined.ts';
import { createResampler } from './resample.ts';
import { RNNOISE_DELAY_SAMPLES, RNNOISE_FRAME_SAMPLES, RNNOISE_RATE_HZ, Rnnoise } from './rnnoise.ts';
import { BLOCK_SAMPLES, EARS_RATE_HZ } from './sound-format.ts';

/** A moment of sound at the ears' rate in three ways, sample for sample of the same moment. */
export interface SoundBlock {
  /** As the microphone had it: how loud the voice and the room are is measured on this. */
  readonly heard: Float32Array;
  /** Without the room's noise, as far as that can be told from speech: when somebody speaks is seen in this. */
  readonly denoised: Float32Array;
  /** Denoised, and {@link HEARD_SHARE} of the heard: words are decoded from this. */
  readonly mixed: Float32Array;
}

/**
 * Share of the heard sound left in what is decoded. With the noise go faint consonants: in denoised sound alone "two inches"
 * is heard as "four inches", "three quarters" as "a quarter". Measured beside an engine at 10 dB, numbers right of 20: heard
 * 16, denoised 11, mixed with a fifth or three tenths 18; beside an impact wrench, phrases of 20: 12, 19, 18.
 */
const HEARD_SHARE = 0.2;

/**
 * From the microphone's slices, at whatever rate the device has, to the ears' blocks. Pure, so that it hears the same in a
 * browser's worker and in Node.
 */
export class FrontEnd {
  readonly #toRnnoise;
  readonly #heardToEars = createResampler(RNNOISE_RATE_HZ, EARS_RATE_HZ);
  readonly #denoisedToEars = createResampler(RNNOISE_RATE_HZ, EARS_RATE_HZ);
  readonly #frames = new Cutter(RNNOISE_FRAME_SAMPLES);
  readonly #heardBlocks = new Cutter(BLOCK_SAMPLES);
  readonly #denoisedBlocks = new Cutter(BLOCK_SAMPLES);
  readonly #rnnoise = new Rnnoise();
  readonly #random: () => number;
  /** The heard sound waits as long as the other takes. */
  #waiting = new Float32Array(RNNOISE_DELAY_SAMPLES);

  /**
   * @param deviceRateHz whole rate of the slices, 8,000 to 384,000
   * @param random for the dither: uniform in [0, 1)
   * @throws RangeError for any other rate
   */
  constructor(deviceRateHz: number, random: () => number = Math.random) {
    this.#toRnnoise = createResampler(deviceRateHz, RNNOISE_RATE_HZ);
    this.#random = random;
  }

  /** Takes the next samples, any number, and returns the blocks that they complete. All blocks joined do not depend on the cuts. */
  push(slice: Float32Array): readonly SoundBlock[] {
    const blocks: SoundBlock[] = [];
    for (const frame of this.#frames.cut(this.#toRnnoise.push(slice))) {
      const heard = this.#heardBlocks.cut(this.#heardToEars.push(this.#delayed(frame)));
      this.#rnnoise.clean(frame);
      const denoised = this.#denoisedBlocks.cut(this.#denoisedToEars.push(frame));
      for (const [i, each] of heard.entries()) {
        blocks.push(this.#block(each, denoised[i] as Float32Array));
      }
    }
    return blocks;
  }

  #block(heard: Float32Array, denoised: Float32Array): SoundBlock {
    addDither(heard, this.#random);
    addDither(denoised, this.#random);
    const mixed = heard.map(
      (sample, i) => HEARD_SHARE * sample + (1 - HEARD_SHARE) * (denoised[i] as number),
    );
    return { heard, denoised, mixed };
  }

  #delayed(frame: Float32Array): Float32Array {
    const all = joined([this.#waiting, frame]);
    this.#waiting = all.slice(frame.length);
    return all.subarray(0, frame.length);
  }

  /** Frees its memory; it takes no more sound. */
  close(): void {
    this.#rnnoise.close();
  }
}
