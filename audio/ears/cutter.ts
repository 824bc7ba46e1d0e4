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
    const joined = joinedTo(this.#rest, samples);
    const pieces: Float32Array[] = [];
    let at = 0;
    for (; at + this.#length <= joined.length; at += this.#length) {
      pieces.push(joined.slice(at, at + this.#length));
    }
    this.#rest = joined.slice(at);
    return pieces;
  }
}

/** Sounds put one behind the other. */
export function joinedTo(before: Float32Array, samples: Float32Array): Float32Array<ArrayBuffer> {
  const joined = new Float32Array(before.length + samples.length);
  joined.set(before);
  joined.set(samples, before.length);
  return joined;
}
