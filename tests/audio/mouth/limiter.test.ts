import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limited } from '../../../audio/mouth/render/limiter.ts';

const samples = fc
  .array(fc.float({ min: -2, max: 2, noNaN: true }), { minLength: 1, maxLength: 400 })
  .map((values) => Float32Array.from(values));

describe('the limiter', () => {
  it('lets no sample past the ceiling and turns none over', () => {
    fc.assert(
      fc.property(samples, fc.double({ min: 0.1, max: 1, noNaN: true }), (input, ceiling) =>
        limited(input, ceiling, 1000, 0.01).every(
          (sample, at) => Math.abs(sample) <= ceiling + 1e-6 && sample * (input[at] ?? 0) >= 0,
        ),
      ),
    );
  });

  it('leaves what stays under the ceiling as it was', () => {
    fc.assert(
      fc.property(samples, (input) =>
        limited(input, 2, 1000, 0.01).every((sample, at) => sample === input[at]),
      ),
    );
  });

  it('touches only the neighbourhood of a peak', () => {
    const input = new Float32Array(1000).fill(0.1);
    input[500] = 1;
    const output = limited(input, 0.5, 1000, 0.01);
    expect(output[500]).toBeCloseTo(0.5, 6);
    expect(output[470]).toBe(input[470]);
    expect(output[530]).toBe(input[530]);
    // The gain sinks in steps far smaller than the peak, so no click is made.
    for (let at = 480; at < 520; at++) {
      if (at === 499 || at === 500) continue;
      expect(Math.abs((output[at + 1] ?? 0) - (output[at] ?? 0))).toBeLessThan(0.006);
    }
  });
});
