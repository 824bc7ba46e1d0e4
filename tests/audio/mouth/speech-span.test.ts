import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speechSpan } from '../../../audio/mouth/speech-span.ts';

function toneAmid(
  silenceBefore: number,
  tone: number,
  silenceAfter: number,
  amplitude: number,
  rateHz: number,
): Float32Array {
  const samples = new Float32Array(silenceBefore + tone + silenceAfter);
  for (let at = 0; at < tone; at++)
    samples[silenceBefore + at] = amplitude * Math.sin((2 * Math.PI * 500 * at) / rateHz);
  return samples;
}

describe('the span of speech in a clip', () => {
  it('holds all of it and at most 50 ms more, whatever silence a decoder left', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 800, max: 20_000 }),
        fc.integer({ min: 0, max: 5000 }),
        fc.constantFrom(16_000, 44_100, 48_000),
        (before, tone, after, rateHz) => {
          const span = speechSpan(toneAmid(before, tone, after, 0.1, rateHz), rateHz);
          return (
            span !== undefined &&
            span.start <= before &&
            span.end >= before + tone &&
            span.end - span.start <= tone + 0.055 * rateHz
          );
        },
      ),
    );
  });

  it('does not take coding noise for speech', () => {
    expect(speechSpan(toneAmid(100, 8000, 100, 10 ** (-55 / 20), 16_000), 16_000)).toBeUndefined();
    expect(speechSpan(new Float32Array(0), 16_000)).toBeUndefined();
  });
});
