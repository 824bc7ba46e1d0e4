import { describe, expect, it } from 'vitest';
import { bandPowers, fourierTransform, SPECTRUM_SAMPLES } from '../../../audio/ears/band-powers.ts';
import { meanPower } from '../../../audio/ears/level.ts';
import { blocksOf, sine, whiteNoise } from './test-sounds.ts';

describe('the Fourier transform', () => {
  // Against the definition X[k] = sum x[n] exp(-2 pi i k n / N), summed as it stands.
  it('is the sum it is defined as', () => {
    const sound = whiteNoise(64, 1);
    const re = Float64Array.from(sound);
    const im = new Float64Array(64);
    fourierTransform(re, im);
    for (let k = 0; k < 64; k += 1) {
      let a = 0;
      let b = 0;
      sound.forEach((sample, n) => {
        a += sample * Math.cos((2 * Math.PI * k * n) / 64);
        b -= sample * Math.sin((2 * Math.PI * k * n) / 64);
      });
      expect(re[k]).toBeCloseTo(a, 8);
      expect(im[k]).toBeCloseTo(b, 8);
    }
  });
});

describe('band powers', () => {
  it('add up to the power of white noise in the bands’ share of the spectrum (Parseval)', () => {
    const noise = whiteNoise(SPECTRUM_SAMPLES * 200, 0.1);
    const edges = [2_000, 4_000, 6_000];
    const sums = [0, 0];
    for (const frame of blocksOf(noise, SPECTRUM_SAMPLES)) {
      bandPowers(frame, edges).forEach((power, band) => {
        sums[band] = (sums[band] as number) + power / 200;
      });
    }
    for (const sum of sums) expect(sum / (meanPower(noise) / 4)).toBeCloseTo(1, 1);
  });

  it('put a tone into its own band, 40 dB over the others', () => {
    const [low = 0, own = 0, high = 0] = bandPowers(
      sine(SPECTRUM_SAMPLES, 1_500),
      [200, 1_000, 2_000, 4_000],
    );
    expect(10 * Math.log10(own / Math.max(low, high))).toBeGreaterThan(40);
    expect(own).toBeCloseTo(0.5, 1);
  });

  it('refuse a frame of another length', () => {
    expect(() => bandPowers(new Float32Array(100), [0, 8_000])).toThrow(/512 samples, not 100/);
  });
});
