import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { activeLevel } from '../../../audio/mouth/active-level.ts';

const RATE_HZ = 16_000;

function sine(lengthS: number, amplitude: number): Float32Array {
  return Float32Array.from(
    { length: lengthS * RATE_HZ },
    (_, at) => amplitude * Math.sin((2 * Math.PI * 1000 * at) / RATE_HZ),
  );
}

/** Bursts of tone of half a second, each followed by a pause. */
function bursts(count: number, pauseS: number): Float32Array {
  const period = (0.5 + pauseS) * RATE_HZ;
  const burst = sine(0.5, 0.1);
  const all = new Float32Array(count * period);
  for (let index = 0; index < count; index++) all.set(burst, index * period);
  return all;
}

describe('active speech level', () => {
  it('of a steady tone is its root mean square', () => {
    // A sine of amplitude a has a mean square of a^2 / 2: -3.01 dB against full scale, less the amplitude.
    expect(activeLevel(sine(5, 0.1), RATE_HZ).levelDbfs).toBeCloseTo(-23.01, 1);
    expect(activeLevel(sine(5, 0.1), RATE_HZ).activity).toBeCloseTo(1, 1);
  });

  it('does not count pauses, beyond the 200 ms of hangover that ITU-T P.56 gives each burst', () => {
    const rms = -23.01;
    const { levelDbfs, activity } = activeLevel(bursts(10, 2.5), RATE_HZ);
    // Each burst counts for its half second, the hangover and the envelope's decay, out of three seconds.
    expect(activity).toBeGreaterThan(0.7 / 3 - 0.02);
    expect(activity).toBeLessThan(0.95 / 3);
    expect(levelDbfs).toBeCloseTo(rms - 10 * Math.log10((3 * activity) / 0.5), 1);
  });

  it('does not move when the pauses grow', () => {
    const short = activeLevel(bursts(10, 1.5), RATE_HZ).levelDbfs;
    const long = activeLevel(bursts(10, 4.5), RATE_HZ).levelDbfs;
    expect(Math.abs(short - long)).toBeLessThan(0.1);
  });

  it('follows the gain', () => {
    const speechLike = bursts(4, 0.7);
    const before = activeLevel(speechLike, RATE_HZ).levelDbfs;
    fc.assert(
      fc.property(fc.double({ min: -30, max: 18, noNaN: true }), (gainDb) => {
        const after = activeLevel(
          speechLike.map((sample) => sample * 10 ** (gainDb / 20)),
          RATE_HZ,
        ).levelDbfs;
        // Thresholds lie 6 dB apart and the level between them is read off a straight line.
        return Math.abs(after - before - gainDb) < 0.3;
      }),
    );
  });

  it('of silence is no level at all', () => {
    expect(activeLevel(new Float32Array(RATE_HZ), RATE_HZ)).toEqual({
      levelDbfs: Number.NEGATIVE_INFINITY,
      activity: 0,
    });
  });
});
