import { bandPowers, SPECTRUM_SAMPLES } from './band-powers.ts';

/**
 * Notices a microphone that carries only the telephone's band (a headset on a narrow Bluetooth link cuts at 4 kHz): the
 * recogniser loses half of what it hears through one, and nothing else on the tablet tells the person why.
 */

/** The telephone's upper end and what lies over it. ITU-T G.712 passes up to 3.4 kHz and stops at 4.6 kHz. */
const EDGES_HZ = [1_000, 3_400, 4_600, 7_000];

/**
 * Upper band against middle band under which the upper one is missing. Wideband speech measures -10 to -30 dB here, the same
 * speech through 8 kHz sampling -66; halfway between.
 */
const MISSING_UNDER_DB = -48;

/** Speech looked at before anything is said, frames of 32 ms: about three phrases. */
const ENOUGH_FRAMES = 60;

/** The band-limit notice over the speech heard so far. */
export class BandwidthWatch {
  #middle = 0;
  #upper = 0;
  #frames = 0;

  /** Takes speech at the ears' rate; silence says nothing about the line, so leave it out. */
  takeSpeech(samples: Float32Array): void {
    for (let at = 0; at + SPECTRUM_SAMPLES <= samples.length; at += SPECTRUM_SAMPLES) {
      const powers = bandPowers(samples.subarray(at, at + SPECTRUM_SAMPLES), EDGES_HZ);
      this.#middle += powers[0] as number;
      this.#upper += powers[2] as number;
      this.#frames += 1;
    }
  }

  /** Whether the line carries less than the voice: undefined until enough speech was heard to say. */
  get isBandLimited(): boolean | undefined {
    if (this.#frames < ENOUGH_FRAMES || this.#middle === 0) return undefined;
    return 10 * Math.log10(this.#upper / this.#middle + 1e-12) < MISSING_UNDER_DB;
  }
}
