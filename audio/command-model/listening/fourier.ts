/** A discrete Fourier transform of fixed length, a power of two (radix 2, in place; Cooley and Tukey 1965). */
export class Fourier {
  private readonly cosines: Float64Array;
  private readonly sines: Float64Array;
  private readonly reversed: Uint32Array;

  constructor(readonly length: number) {
    const bits = Math.log2(length);
    if (!Number.isInteger(bits)) throw new Error(`${length} is not a power of two.`);
    this.cosines = Float64Array.from({ length: length / 2 }, (_, i) => Math.cos((2 * Math.PI * i) / length));
    this.sines = Float64Array.from({ length: length / 2 }, (_, i) => -Math.sin((2 * Math.PI * i) / length));
    this.reversed = Uint32Array.from({ length }, (_, i) => {
      let mirrored = 0;
      for (let bit = 0; bit < bits; bit++) mirrored |= ((i >> bit) & 1) << (bits - 1 - bit);
      return mirrored;
    });
  }

  /** Replaces the values by their transform, not scaled. */
  forward(real: Float64Array, imaginary: Float64Array): void {
    const { length, reversed, cosines, sines } = this;
    for (let i = 0; i < length; i++) {
      const j = reversed[i] as number;
      if (j <= i) continue;
      const [r, m] = [real[i] as number, imaginary[i] as number];
      real[i] = real[j] as number;
      imaginary[i] = imaginary[j] as number;
      real[j] = r;
      imaginary[j] = m;
    }
    for (let half = 1; half < length; half *= 2) {
      const stride = length / (2 * half);
      for (let block = 0; block < length; block += 2 * half) {
        for (let k = 0; k < half; k++) {
          const [c, s] = [cosines[k * stride] as number, sines[k * stride] as number];
          const low = block + k;
          const high = low + half;
          const [hr, hi] = [real[high] as number, imaginary[high] as number];
          const tr = hr * c - hi * s;
          const ti = hr * s + hi * c;
          const [lr, li] = [real[low] as number, imaginary[low] as number];
          real[high] = lr - tr;
          imaginary[high] = li - ti;
          real[low] = lr + tr;
          imaginary[low] = li + ti;
        }
      }
    }
  }

  /** Undoes `forward`, scale included. */
  inverse(real: Float64Array, imaginary: Float64Array): void {
    this.forward(imaginary, real);
    for (let i = 0; i < this.length; i++) {
      real[i] = (real[i] as number) / this.length;
      imaginary[i] = (imaginary[i] as number) / this.length;
    }
  }
}
