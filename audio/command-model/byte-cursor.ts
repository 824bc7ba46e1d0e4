/** Reads little-endian binary data front to back; every read past the end is an error that names the file. */
export class ByteCursor {
  private readonly view: DataView;
  private at = 0;

  constructor(
    private readonly bytes: Uint8Array,
    private readonly fileName: string,
  ) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  get position(): number {
    return this.at;
  }

  get remaining(): number {
    return this.bytes.length - this.at;
  }

  private take(count: number): number {
    if (count < 0 || count > this.remaining) {
      throw new Error(
        `${this.fileName} is cut short: ${count} bytes wanted at ${this.at}, ${this.remaining} left.`,
      );
    }
    const start = this.at;
    this.at += count;
    return start;
  }

  skip(count: number): void {
    this.take(count);
  }

  uint8(): number {
    return this.view.getUint8(this.take(1));
  }

  int16(): number {
    return this.view.getInt16(this.take(2), true);
  }

  uint16(): number {
    return this.view.getUint16(this.take(2), true);
  }

  int32(): number {
    return this.view.getInt32(this.take(4), true);
  }

  uint32(): number {
    return this.view.getUint32(this.take(4), true);
  }

  float32s(count: number): Float32Array {
    const start = this.take(4 * count);
    return Float32Array.from({ length: count }, (_, i) => this.view.getFloat32(start + 4 * i, true));
  }

  byteArray(count: number): Uint8Array {
    const start = this.take(count);
    return this.bytes.subarray(start, start + count);
  }

  /** Text up to, and not including, the next `terminator` byte, which is skipped. */
  textUntil(terminator: number): string {
    const end = this.bytes.indexOf(terminator, this.at);
    if (end < 0) throw new Error(`${this.fileName} is cut short: a text is not ended.`);
    const text = new TextDecoder('latin1').decode(this.byteArray(end - this.at));
    this.skip(1);
    return text;
  }
}
