import { msToSamples, samplesToMs } from './sound-format.ts';

/**
 * The room's last seconds as the microphone heard them: no voice of ours, no answers. What an utterance is cleaned of is
 * learnt from it, however soon after our own voice it comes.
 */
export class RoomMemory {
  readonly #ring: Float32Array;
  #written = 0;

  /** @param lengthMs what it holds at most, milliseconds, over 0 */
  constructor(lengthMs: number) {
    const length = msToSamples(lengthMs);
    if (!(length > 0)) throw new RangeError(`A room memory needs a length over 0 ms, not ${lengthMs}.`);
    this.#ring = new Float32Array(length);
  }

  /** Milliseconds held now. */
  get heldMs(): number {
    return samplesToMs(Math.min(this.#written, this.#ring.length));
  }

  /** Adds sound at the ears' rate; the oldest goes. */
  add(samples: Float32Array): void {
    const ring = this.#ring;
    const kept = samples.length > ring.length ? samples.subarray(samples.length - ring.length) : samples;
    const at = (this.#written + samples.length - kept.length) % ring.length;
    const head = Math.min(kept.length, ring.length - at);
    ring.set(kept.subarray(0, head), at);
    ring.set(kept.subarray(head), 0);
    this.#written += samples.length;
  }

  /** What it holds, oldest first, as a copy. */
  recall(): Float32Array {
    const ring = this.#ring;
    if (this.#written < ring.length) return ring.slice(0, this.#written);
    const at = this.#written % ring.length;
    const out = new Float32Array(ring.length);
    out.set(ring.subarray(at));
    out.set(ring.subarray(0, at), ring.length - at);
    return out;
  }

  /** Forgets everything: another microphone hears another room. */
  clear(): void {
    this.#written = 0;
  }
}
