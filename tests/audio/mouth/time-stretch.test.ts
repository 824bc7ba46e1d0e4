import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { activeLevel } from '../../../audio/mouth/active-level.ts';
import { stretched } from '../../../audio/mouth/time-stretch.ts';

const RATE_HZ = 16_000;
const PACES = [0.5, 0.8, 1.25, 2] as const;

/** Ten harmonics of a voice's pitch, each half as strong as the one before. */
function voiced(pitchHz: number, lengthS: number): Float32Array<ArrayBuffer> {
  return Float32Array.from({ length: Math.round(lengthS * RATE_HZ) }, (_, at) =>
    Array.from({ length: 10 }, (_, index) => index + 1).reduce(
      (sum, harmonic) =>
        sum + 0.1 * 2 ** -harmonic * Math.sin((2 * Math.PI * harmonic * pitchHz * at) / RATE_HZ),
      0,
    ),
  );
}

/** How much of a signal is left when it is taken from itself one pitch period later, decibels; low where it is periodic. */
function brokenDb(samples: Float32Array, periodSamples: number): number {
  let kept = 0;
  let broken = 0;
  for (let at = RATE_HZ / 10; at < samples.length - RATE_HZ / 10 - periodSamples; at++) {
    const sample = samples[at] ?? 0;
    kept += sample ** 2;
    broken += (sample - (samples[at + periodSamples] ?? 0)) ** 2;
  }
  return 10 * Math.log10(broken / kept);
}

describe('speech at another pace', () => {
  it('lasts as much longer or shorter as was asked', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20_000 }),
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (length, pace) => {
          expect(stretched(new Float32Array(length).fill(0.1), RATE_HZ, pace).length).toBe(
            Math.round(length / pace),
          );
        },
      ),
      { numRuns: 20 },
    );
  });

  it.each(PACES)('keeps a pitch of 125 and of 200 Hz at pace %s, period for period', (pace) => {
    for (const pitchHz of [125, 200]) {
      const made = stretched(voiced(pitchHz, 1), RATE_HZ, pace);
      expect(brokenDb(made, RATE_HZ / pitchHz)).toBeLessThan(-35);
    }
  });

  it('is what playing it faster would not do', () => {
    expect(brokenDb(voiced(1.25 * 200, 1), RATE_HZ / 200)).toBeGreaterThan(-10);
  });

  it.each(PACES)('stays as loud at pace %s', (pace) => {
    const before = voiced(180, 1);
    const change =
      activeLevel(stretched(before, RATE_HZ, pace), RATE_HZ).levelDbfs -
      activeLevel(before, RATE_HZ).levelDbfs;
    expect(Math.abs(change)).toBeLessThan(0.5);
  });

  it('keeps the order and the place of what is said', () => {
    const samples = new Float32Array(RATE_HZ);
    samples.set(voiced(150, 0.2), 0.1 * RATE_HZ);
    samples.set(voiced(220, 0.2), 0.6 * RATE_HZ);
    const made = stretched(samples, RATE_HZ, 0.8);
    const power = (fromS: number, toS: number) =>
      made.subarray(fromS * RATE_HZ, toS * RATE_HZ).reduce((sum, sample) => sum + sample * sample, 0);
    const whole = power(0, 1.25);
    // Each burst lies where it was, a quarter later and a quarter longer; a frame may be taken 10 ms off.
    expect(power(0.1, 0.4) / whole).toBeGreaterThan(0.45);
    expect(power(0.725, 1.025) / whole).toBeGreaterThan(0.45);
    expect(power(0.4, 0.725)).toBeLessThan(0.001 * whole);
  });

  it('is left as it is at its own pace, and refused where words come apart', () => {
    const samples = voiced(150, 0.1);
    expect(stretched(samples, RATE_HZ, 1)).toBe(samples);
    for (const pace of [0.4, 2.1, Number.NaN])
      expect(() => stretched(samples, RATE_HZ, pace)).toThrow(RangeError);
  });
});
