import { describe, expect, it } from 'vitest';
import { type Earcon, earconSamples } from '../../../audio/mouth/earcons.ts';
import { VOICE_SETTINGS } from '../../../audio/mouth/render/voice-settings.ts';
import { BAND_RATE_HZ, bandShares } from './band-share.ts';

const EARCONS: readonly Earcon[] = ['listening', 'heard', 'notHeard'];
const RATE_HZ = 48_000;

/** Lengths of sound and silence by turns, in hundredths of a second. */
function rhythm(samples: Float32Array): number[] {
  const step = RATE_HZ / 100;
  const lengths: number[] = [];
  let sounding = true;
  let count = 0;
  for (let at = 0; at < samples.length; at += step) {
    const loud = samples.subarray(at, at + step).some((sample) => Math.abs(sample) > 0.03);
    if (loud === sounding) count++;
    else {
      lengths.push(count);
      [sounding, count] = [loud, 1];
    }
  }
  return [...lengths, count];
}

describe('earcons', () => {
  it.each(EARCONS)('%s is short, under the voice, and soft at both ends', (earcon) => {
    const samples = earconSamples(earcon, RATE_HZ);
    const peakDbfs = 20 * Math.log10(Math.max(...samples.map(Math.abs)));
    expect(samples.length / RATE_HZ).toBeGreaterThan(0.1);
    expect(samples.length / RATE_HZ).toBeLessThan(0.5);
    expect(peakDbfs).toBeCloseTo(-10, 1);
    expect(peakDbfs).toBeLessThan(VOICE_SETTINGS.peakDbfs);
    for (const edge of [samples.subarray(0, 24), samples.subarray(-24)]) {
      expect(Math.max(...edge.map(Math.abs))).toBeLessThan(0.01);
    }
  });

  // IEC 60601-1-8: at least four harmonics of an alarm pulse lie between 300 and 4000 Hz. Borrowed for audibility.
  it.each(EARCONS)('%s lies between 300 and 4000 Hz, in at least four harmonics', (earcon) => {
    const samples = earconSamples(earcon, BAND_RATE_HZ);
    expect(bandShares(samples, [300, 4000])[0]).toBeGreaterThan(0.98);
    const pitch = { listening: 587, heard: 784, notHeard: 330 }[earcon];
    for (const harmonic of [1, 2, 3, 4]) {
      expect(
        bandShares(samples, [harmonic * pitch - 80, harmonic * pitch + 80])[0],
        `harmonic ${harmonic}`,
      ).toBeGreaterThan(0.01);
    }
  });

  it('are told apart by rhythm alone, and none has the three pulses of an alarm', () => {
    const rhythms = EARCONS.map((earcon) => rhythm(earconSamples(earcon, RATE_HZ)));
    const pulses = rhythms.map((lengths) => Math.ceil(lengths.length / 2));
    expect(pulses).toEqual([1, 2, 2]);
    const [, heard = [], notHeard = []] = rhythms;
    // The two of two pulses differ in their gap and in the length of the second pulse, each nearly twofold or more.
    expect((notHeard[1] ?? 0) / (heard[1] ?? 1)).toBeGreaterThan(1.8);
    expect((notHeard[2] ?? 0) / (heard[2] ?? 1)).toBeGreaterThan(2);
  });

  it('sound alike at every rate of the loudspeaker', () => {
    for (const earcon of EARCONS) {
      expect(earconSamples(earcon, 16_000).length / 16_000).toBeCloseTo(
        earconSamples(earcon, 44_100).length / 44_100,
        3,
      );
    }
  });
});
