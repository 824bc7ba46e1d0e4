import { joined } from './joined.ts';

/** Cuts a stream of any lengths into pieces of one length. */
export class Cutter {
  readonly #length: number;
  #rest = new Float32Array(0);

  /** @param length of a piece, samples, at least 1 */
  constructor(length: number) {
    this.#length = length;
  }

  /** Takes the next samples, any number, and returns the pieces that they complete. */
  cut(samples: Float32Array): Float32Array[] {
    const all = joined([this.#rest, samples]);
    const pieces: Float32Array[] = [];
    let at = 0;
    for (; at + this.#length <= all.length; at += this.#length) {
      pieces.push(all.slice(at, at + this.#length));
    }
    this.#rest = all.slice(at);
    return pieces;
  }
}
