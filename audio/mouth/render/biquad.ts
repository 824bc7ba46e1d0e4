/**
 * Second-order filters after R. Bristow-Johnson's "Audio EQ Cookbook" (W3C Working Group Note, 2021), applied in
 * transposed direct form II.
 */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** High-pass: flat above `cornerHz`, falling 12 decibels an octave below it; `q` 0.707 has no bump at the corner. */
export function highPass(cornerHz: number, q: number, sampleRateHz: number): Biquad {
  const { cosine, alpha } = angles(cornerHz, q, sampleRateHz);
  return normalised([(1 + cosine) / 2, -(1 + cosine), (1 + cosine) / 2], [1 + alpha, -2 * cosine, 1 - alpha]);
}

/** Peak of `gainDb` decibels at `centreHz`, wider for smaller `q`, and flat far from it. */
export function peak(centreHz: number, q: number, gainDb: number, sampleRateHz: number): Biquad {
  const { cosine, alpha } = angles(centreHz, q, sampleRateHz);
  const amplitude = 10 ** (gainDb / 40);
  return normalised(
    [1 + alpha * amplitude, -2 * cosine, 1 - alpha * amplitude],
    [1 + alpha / amplitude, -2 * cosine, 1 - alpha / amplitude],
  );
}

/** The filtered samples, as many as came in. */
export function filtered(samples: Float32Array, { b0, b1, b2, a1, a2 }: Biquad): Float32Array {
  let first = 0;
  let second = 0;
  return samples.map((sample) => {
    const out = b0 * sample + first;
    first = b1 * sample - a1 * out + second;
    second = b2 * sample - a2 * out;
    return out;
  });
}

function angles(frequencyHz: number, q: number, sampleRateHz: number) {
  const omega = (2 * Math.PI * frequencyHz) / sampleRateHz;
  return { cosine: Math.cos(omega), alpha: Math.sin(omega) / (2 * q) };
}

function normalised(
  [b0, b1, b2]: readonly [number, number, number],
  [a0, a1, a2]: readonly [number, number, number],
): Biquad {
  return { b0: b0 / a0, b1: b1 / a0, b2: b2 / a0, a1: a1 / a0, a2: a2 / a0 };
}
