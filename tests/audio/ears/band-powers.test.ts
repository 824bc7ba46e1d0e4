import { describe, expect, it } from 'vitest';
import { bandPowers, SPECTRUM_SAMPLES } from '../../../audio/ears/band-powers.ts';
import { meanPower } from '../../../audio/ears/level.ts';
import { blocksOf, sine, whiteNoise } from './test-sounds.ts';

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
