import { describe, expect, it } from 'vitest';
import { addDither } from '../../../audio/ears/dither.ts';
import { rmsDbfs } from '../../../audio/ears/level.ts';
import { seeded, sine } from './test-sounds.ts';

describe('the dither', () => {
  // Two uniform variables of one step's width have a triangular difference with variance step^2 / 6.
  it('fills exact zeros with triangular noise of one 16-bit step', () => {
    const quiet = new Float32Array(16_000);
    addDither(quiet, seeded(1));
    expect(rmsDbfs(quiet)).toBeCloseTo(20 * Math.log10(2 ** -15 / Math.sqrt(6)), 0);
    expect(quiet.filter((sample) => sample === 0).length).toBeLessThan(10);
  });

  it('moves no sample by more than a step', () => {
    const tone = sine(1_600, 440);
    const dithered = tone.slice();
    addDither(dithered, seeded(2));
    dithered.forEach((sample, i) => {
      expect(Math.abs(sample - (tone[i] as number))).toBeLessThanOrEqual(2 ** -15 + 1e-7);
    });
  });
});
