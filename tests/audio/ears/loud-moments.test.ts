import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LOUD_SHARE, loudAfter } from '../../../audio/ears/loud-moments.ts';
import { seeded } from './test-sounds.ts';

const toDb = (ratio: number) => 10 * Math.log10(ratio);

/** Followed over so many frames, then its mean over as many again, decibels. */
function restsAtDb(start: number, frames: number, power: () => number): number {
  let loud = start;
  for (let i = 0; i < frames; i += 1) loud = loudAfter(loud, power());
  let sum = 0;
  for (let i = 0; i < frames; i += 1) {
    loud = loudAfter(loud, power());
    sum += toDb(loud);
  }
  return sum / frames;
}

describe('the loud moments of a noise', () => {
  it('are where 97 of 100 frames stay under, from wherever they were sought', () => {
    // The power of white noise in one bin of a spectrum is exponentially distributed: its quantile is -mean ln(1 - share).
    const exactDb = toDb(-Math.log(1 - LOUD_SHARE));
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (seed, fromDb) => {
          const random = seeded(seed);
          const atDb = restsAtDb(10 ** (fromDb / 10), 4_000, () => -Math.log(1 - random()));
          expect(Math.abs(atDb - exactDb)).toBeLessThan(1);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('stand still over a noise that does', () => {
    expect(Math.abs(restsAtDb(1, 1_000, () => 1))).toBeLessThan(1);
  });
});
