import { describe, expect, it } from 'vitest';
import { BandwidthWatch } from '../../../audio/ears/bandwidth.ts';
import { createResampler } from '../../../audio/ears/resample.ts';
import { voiceLike, whiteNoise } from './test-sounds.ts';

/** Speech with the breath that every voice has over its buzz, 30 dB under it. */
const breath = whiteNoise(48_000, 0.1 * 10 ** (-30 / 20));
const wideband = voiceLike(3_000, 0.1).map((sample, i) => sample + (breath[i] as number));

describe('the bandwidth watch', () => {
  it('says nothing before it has heard enough', () => {
    const watch = new BandwidthWatch();
    watch.takeSpeech(wideband.subarray(0, 8_000));
    expect(watch.isBandLimited).toBeUndefined();
  });

  it('finds nothing wrong with a full-band microphone', () => {
    const watch = new BandwidthWatch();
    watch.takeSpeech(wideband);
    expect(watch.isBandLimited).toBe(false);
  });

  // A narrow-band Bluetooth link samples at 8 kHz; ITU-T G.712 lets a telephone channel pass up to 3.4 kHz.
  it('notices the same voice through a line sampled at 8 kHz', () => {
    const line = createResampler(16_000, 8_000).push(wideband);
    const watch = new BandwidthWatch();
    watch.takeSpeech(createResampler(8_000, 16_000).push(line));
    expect(watch.isBandLimited).toBe(true);
  });
});
