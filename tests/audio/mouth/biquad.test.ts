import { describe, expect, it } from 'vitest';
import { type Biquad, filtered, highPass, peak } from '../../../audio/mouth/render/biquad.ts';

const RATE_HZ = 16_000;

/** Gain at a frequency, measured by filtering a tone. */
function gainDb(filter: Biquad, frequencyHz: number): number {
  const tone = Float32Array.from({ length: RATE_HZ }, (_, at) =>
    Math.sin((2 * Math.PI * frequencyHz * at) / RATE_HZ),
  );
  const settled = filtered(tone, filter).subarray(RATE_HZ / 2);
  return 10 * Math.log10((2 * settled.reduce((sum, sample) => sum + sample * sample, 0)) / settled.length);
}

// R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Working Group Note, 2021): the gain at the frequency a filter is named
// after is Q for the high-pass and the peak gain for the peak.
describe('filters of the Audio EQ Cookbook', () => {
  it('high-pass: Q at the corner, flat above, 12 dB an octave below', () => {
    const filter = highPass(140, Math.SQRT1_2, RATE_HZ);
    expect(gainDb(filter, 140)).toBeCloseTo(-3.01, 1);
    expect(gainDb(filter, 2000)).toBeCloseTo(0, 1);
    expect(gainDb(filter, 35) - gainDb(filter, 17.5)).toBeCloseTo(12, 0);
  });

  it('peak: its gain at the centre, none far away, and undone by its negative', () => {
    const lift = peak(2600, 0.8, 5, RATE_HZ);
    expect(gainDb(lift, 2600)).toBeCloseTo(5, 1);
    expect(gainDb(lift, 50)).toBeCloseTo(0, 1);
    const cut = peak(2600, 0.8, -5, RATE_HZ);
    for (const frequency of [300, 1000, 2600, 5000]) {
      expect(gainDb(lift, frequency) + gainDb(cut, frequency)).toBeCloseTo(0, 1);
    }
  });
});
