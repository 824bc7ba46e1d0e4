/**
 * Writes Kaldi's binary objects: tokens, numbers, vectors and matrices.
 * Source of the format: base/io-funcs-inl.h and matrix/kaldi-matrix.cc, kaldi-vector.cc of Kaldi (Apache 2.0).
 */
export class KaldiWriter {
  private bytes = new Uint8Array(1 << 16);
  private view = new DataView(this.bytes.buffer);
  private length = 0;

  private grow(count: number): number {
    const start = this.length;
    this.length += count;
    if (this.length > this.bytes.length) {
      const larger = new Uint8Array(Math.max(this.length, 2 * this.bytes.length));
      larger.set(this.bytes);
      this.bytes = larger;
      this.view = new DataView(larger.buffer);
    }
    return start;
  }

  private raw(bytes: Uint8Array): this {
    const start = this.grow(bytes.length);
    this.bytes.set(bytes, start);
    return this;
  }

  /** The two bytes that tell Kaldi a file is binary. */
  binaryMark(): this {
    return this.raw(Uint8Array.of(0, 0x42));
  }

  text(text: string): this {
    return this.raw(new TextEncoder().encode(text));
  }

  /** A token and the space behind it, such as `<Nnet3> `. */
  token(name: string): this {
    return this.text(`${name} `);
  }

  boolean(value: boolean): this {
    return this.text(value ? 'T' : 'F');
  }

  int32(value: number): this {
    const start = this.grow(5);
    this.view.setUint8(start, 4);
    this.view.setInt32(start + 1, value, true);
    return this;
  }

  float32(value: number): this {
    const start = this.grow(5);
    this.view.setUint8(start, 4);
    this.view.setFloat32(start + 1, value, true);
    return this;
  }

  float64(value: number): this {
    const start = this.grow(9);
    this.view.setUint8(start, 8);
    this.view.setFloat64(start + 1, value, true);
    return this;
  }

  /** `std::vector<int32>`. */
  int32Vector(values: readonly number[]): this {
    this.int32(values.length);
    const start = this.grow(4 * values.length);
    values.forEach((value, i) => {
      this.view.setInt32(start + 4 * i, value, true);
    });
    return this;
  }

  private floats(values: ArrayLike<number>): this {
    const start = this.grow(4 * values.length);
    for (let i = 0; i < values.length; i++) this.view.setFloat32(start + 4 * i, values[i] ?? 0, true);
    return this;
  }

  vector(values: ArrayLike<number>): this {
    return this.token('FV').int32(values.length).floats(values);
  }

  /** Row-major values. */
  matrix(rows: number, columns: number, values: ArrayLike<number>): this {
    if (values.length !== rows * columns)
      throw new Error(`${values.length} values do not make ${rows} x ${columns}.`);
    return this.token('FM').int32(rows).int32(columns).floats(values);
  }

  /** Row-major values, written in double precision. */
  doubleMatrix(rows: number, columns: number, values: readonly number[]): this {
    if (values.length !== rows * columns)
      throw new Error(`${values.length} values do not make ${rows} x ${columns}.`);
    this.token('DM').int32(rows).int32(columns);
    const start = this.grow(8 * values.length);
    values.forEach((value, i) => {
      this.view.setFloat64(start + 8 * i, value, true);
    });
    return this;
  }

  finish(): Uint8Array {
    return this.bytes.slice(0, this.length);
  }
}
