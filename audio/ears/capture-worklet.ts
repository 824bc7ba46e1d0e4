/**
 * Runs on the browser's audio thread: joins its 128-sample slices into larger ones and posts them to the page. Everything else
 * (rate, dither, level) happens on the page, where it can be tested. It must import nothing: it is a file of its own.
 */

// The audio thread's own globals, which TypeScript's DOM library leaves out.
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Slices posted together, seconds: as long as a block of the ears, long against the cost of a message. */
const POST_EVERY_S = 0.02;

class Capture extends AudioWorkletProcessor {
  #slice = new Float32Array(Math.round(sampleRate * POST_EVERY_S));
  #filled = 0;

  /** Called by the browser for every 128 samples. Only the first channel is heard; a microphone has one. */
  process(inputs: Float32Array[][]): boolean {
    const channel = inputs[0]?.[0];
    if (channel === undefined) return true;
    for (const sample of channel) {
      this.#slice[this.#filled] = sample;
      this.#filled += 1;
      if (this.#filled === this.#slice.length) {
        this.port.postMessage(this.#slice, [this.#slice.buffer]);
        this.#slice = new Float32Array(Math.round(sampleRate * POST_EVERY_S));
        this.#filled = 0;
      }
    }
    return true;
  }
}

registerProcessor('knotwright-capture', Capture);

export {};
