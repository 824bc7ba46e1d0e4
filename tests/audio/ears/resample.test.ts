import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createResampler } from '../../../audio/ears/resample.ts';
import { sine, whiteNoise } from './test-sounds.ts';

/** Gain in decibels of a tone through the resampler, its run-in and run-out left away. */
function gainDb(fromHz: number, toHz: number, toneHz: number): number {
  const out = createResampler(fromHz, toHz).push(sine(fromHz / 2, toneHz, fromHz));
  const settled = out.subarray(Math.round(out.length * 0.1), Math.round(out.length * 0.9));
  const power = settled.reduce((sum, sample) => sum + sample * sample, 0) / settled.length;
  return 10 * Math.log10(power / 0.5 + 1e-20);
}

const deviceRatesHz = [44_100, 48_000, 96_000, 22_050, 32_000];

describe('the resampler', () => {
  it.each(deviceRatesHz)('passes the recogniser’s band (130 to 6,800 Hz) unchanged from %i Hz', (rateHz) => {
    for (const toneHz of [130, 1_000, 3_400, 6_800]) {
      expect(Math.abs(gainDb(rateHz, 16_000, toneHz))).toBeLessThan(0.02);
    }
  });

  // Sampling theorem (Shannon 1949): a tone over 8 kHz has no place in 16 kHz sound; what is left of it is an alias.
  // Kaiser's window is designed here for 80 dB (Oppenheim & Schafer, section 7.5.3).
  it.each(deviceRatesHz)('leaves no alias of what lies over 8 kHz from %i Hz', (rateHz) => {
    for (const toneHz of [8_050, 9_000, 9_900, 10_900]) {
      expect(gainDb(rateHz, 16_000, toneHz)).toBeLessThan(-78);
    }
  });

  it('leaves no image above the input when it raises the rate', () => {
    const out = createResampler(8_000, 16_000).push(sine(8_000, 3_000, 8_000));
    const settled = out.subarray(2_000, 14_000);
    const power = (hz: number): number => {
      const tone = sine(settled.length, hz, 16_000);
      const turned =
        settled.reduce((sum, sample, i) => sum + sample * (tone[i] as number), 0) / settled.length;
      return turned * turned;
    };
    // The image of 3 kHz about the old Nyquist frequency lies at 5 kHz.
    expect(10 * Math.log10((power(5_000) + 1e-20) / power(3_000))).toBeLessThan(-70);
  });

  it('passes a constant unchanged in every phase', () => {
    const out = createResampler(44_100, 16_000).push(new Float32Array(44_100).fill(0.5));
    for (const sample of out.subarray(500)) expect(sample).toBeCloseTo(0.5, 5);
  });

  it('delays by what it says', () => {
    const resampler = createResampler(48_000, 16_000);
    const click = new Float32Array(4_800);
    click[0] = 1;
    const out = resampler.push(click);
    const loudest = out.reduce(
      (best, sample, i) => (Math.abs(sample) > Math.abs(out[best] as number) ? i : best),
      0,
    );
    expect(Math.abs((loudest * 1_000) / 16_000 - resampler.delayMs)).toBeLessThan(1 / 16);
  });

  it('gives the same samples however the input is cut', () => {
    const sound = whiteNoise(3_000, 0.1);
    fc.assert(
      fc.property(
        fc.constantFrom(...deviceRatesHz),
        fc.array(fc.integer({ min: 0, max: 700 }), { maxLength: 12 }),
        (rateHz, cuts) => {
          const whole = createResampler(rateHz, 16_000).push(sound);
          const resampler = createResampler(rateHz, 16_000);
          const parts: number[] = [];
          let at = 0;
          for (const cut of [...cuts, sound.length]) {
            parts.push(...resampler.push(sound.subarray(at, at + cut)));
            at += cut;
          }
          expect(Float32Array.from(parts)).toEqual(whole);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('gives one second of output for one second of input, to a sample', () => {
    for (const rateHz of deviceRatesHz) {
      expect(createResampler(rateHz, 16_000).push(new Float32Array(rateHz))).toHaveLength(16_000);
    }
  });

  it.each([0, 4_000, 44_100.5, Number.NaN, 1_000_000])('refuses %d Hz with a sentence', (rateHz) => {
    expect(() => createResampler(rateHz, 16_000)).toThrow(/Sampling rates run from 8000 to 384000/);
  });
});
