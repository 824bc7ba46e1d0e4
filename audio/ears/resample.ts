/**
 * A streaming change of sampling rate by any ratio of whole rates: a low-pass filter (a sinc under a Kaiser window) evaluated
 * only at the output instants. Pure: no Web Audio, so it gives the same samples in a browser, a worker and Node.
 *
 * Why not let the browser do it: an AudioContext asked for 16 kHz refuses microphones in Firefox, and browsers differ in
 * how much of the sound above 8 kHz they fold down into the speech band.
 */

/** Stop-band attenuation the window is designed for, decibels. Engine noise folded down stays under the speech at 80. */
const ATTENUATION_DB = 80;

/** Share of the lower Nyquist frequency that is passed unchanged. 7 kHz of 8: the recogniser's filters end at 6.8 kHz. */
const PASSBAND_SHARE = 0.875;

const MIN_RATE_HZ = 8_000;
const MAX_RATE_HZ = 384_000;

/** A stream of sound at one rate turned into a stream at another. It keeps what it still needs between blocks. */
export interface Resampler {
  readonly fromHz: number;
  readonly toHz: number;
  /** Delay the filter adds, milliseconds. */
  readonly delayMs: number;
  /**
   * Takes the next samples and returns the output they complete: any length, also empty. All outputs joined are the same
   * however the input was cut into blocks.
   */
  push(input: Float32Array): Float32Array;
}

/**
 * Makes a resampler.
 * @param fromHz whole input rate, 8,000 to 384,000
 * @param toHz whole output rate, 8,000 to 384,000
 * @throws RangeError for any other rate
 */
export function createResampler(fromHz: number, toHz: number): Resampler {
  for (const rateHz of [fromHz, toHz]) {
    if (!Number.isInteger(rateHz) || rateHz < MIN_RATE_HZ || rateHz > MAX_RATE_HZ) {
      throw new RangeError(
        `Sampling rates run from ${MIN_RATE_HZ} to ${MAX_RATE_HZ} whole hertz, not ${rateHz}.`,
      );
    }
  }
  if (fromHz === toHz) {
    return { fromHz, toHz, delayMs: 0, push: (input) => input.slice() };
  }
  const divisor = greatestCommonDivisor(fromHz, toHz);
  const up = toHz / divisor;
  const down = fromHz / divisor;
  const phases = designPhases(fromHz, toHz, up);
  const taps = phases[0]?.length ?? 0;

  // The last `taps - 1` input samples, in front of each new block; zeros before the first.
  let history = new Float32Array(taps - 1);
  // Where the next output lies after the first sample that is new, in units of 1/up input samples.
  let next = 0;

  function push(input: Float32Array): Float32Array {
    const joined = new Float32Array(history.length + input.length);
    joined.set(history);
    joined.set(input, history.length);
    const count = Math.max(0, Math.ceil((input.length * up - next) / down));
    const output = new Float32Array(count);
    for (let n = 0; n < count; n += 1) {
      const first = Math.floor(next / up);
      const filter = phases[next % up] as Float32Array;
      let sum = 0;
      for (let k = 0; k < taps; k += 1) sum += (joined[first + k] as number) * (filter[k] as number);
      output[n] = sum;
      next += down;
    }
    next -= input.length * up;
    history = joined.slice(joined.length - history.length);
    return output;
  }

  return { fromHz, toHz, delayMs: (((taps - 1) / 2) * 1000) / fromHz, push };
}

/**
 * The filter cut into one set of taps for each place an output can fall between two inputs, oldest input first.
 * Length and shape by Kaiser's formulas (J. F. Kaiser, "Nonrecursive digital filter design using the I0-sinh window
 * function", IEEE ISCAS 1974; also Oppenheim & Schafer, Discrete-Time Signal Processing, section 7.5.3).
 */
function designPhases(fromHz: number, toHz: number, up: number): Float32Array[] {
  const nyquistHz = Math.min(fromHz, toHz) / 2;
  const passHz = PASSBAND_SHARE * nyquistHz;
  const cutoffHz = (passHz + nyquistHz) / 2;
  const transition = (2 * Math.PI * (nyquistHz - passHz)) / fromHz;
  const beta = 0.1102 * (ATTENUATION_DB - 8.7);
  const taps = Math.ceil((ATTENUATION_DB - 7.95) / (2.285 * transition)) + 1;
  const centre = (taps - 1) / 2;
  const cutoff = (2 * cutoffHz) / fromHz;
  const besselAtBeta = besselI0(beta);

  return Array.from({ length: up }, (_, phase) => {
    const filter = new Float32Array(taps);
    let sum = 0;
    for (let k = 0; k < taps; k += 1) {
      // Distance of this input from the output instant, in input samples.
      const t = k - centre - phase / up;
      const edge = Math.abs(t) / (centre + 1);
      const window = edge < 1 ? besselI0(beta * Math.sqrt(1 - edge * edge)) / besselAtBeta : 0;
      const value = cutoff * sinc(cutoff * t) * window;
      filter[k] = value;
      sum += value;
    }
    // Each phase passes a constant unchanged; otherwise the phases beat against each other as a faint whistle.
    return filter.map((value) => value / sum);
  });
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}

/** Modified Bessel function of the first kind and order 0, by its power series (Abramowitz & Stegun 9.6.12). */
function besselI0(x: number): number {
  const quarter = (x * x) / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-12; k += 1) {
    term *= quarter / (k * k);
    sum += term;
  }
  return sum;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
