/**
 * Follows the noise in each mel band and says how much of a frame is speech: spectral subtraction with a lower
 * envelope and temporal masking. The acoustic model was trained on sound cleaned much like this.
 * Source: `fe_track_snr` in sphinxbase/src/libsphinxbase/fe/fe_noise.c (CMU Sphinx, BSD licence), after C. Kim and
 * R. Stern, "Power-normalized cepstral coefficients (PNCC) for robust speech recognition", 2012.
 */
import { bandCount } from './mel-bands.ts';

export interface NoiseTuning {
  /** Share of the past in the smoothed power of a band (0 to 1). */
  readonly powerMemory: number;
  /** Share of the past in the noise where the power is over it; near 1: speech must not become noise. */
  readonly riseMemory: number;
  /** The same where the power is under it. */
  readonly fallMemory: number;
  /** Times the noise that is subtracted: the lower envelope lies under the noise's mean. Sphinx has 1; 2 was measured better. */
  readonly subtraction: number;
  readonly maskMemory: number;
  readonly maskShare: number;
  /** No band is changed by more than this factor of power. Sphinx has 20. */
  readonly gainLimit: number;
  /** Bands on each side over which gains are averaged. */
  readonly smoothingReach: number;
}

export const noiseTuning: NoiseTuning = {
  powerMemory: 0.7,
  riseMemory: 0.999,
  fallMemory: 0.5,
  subtraction: 2,
  maskMemory: 0.85,
  maskShare: 0.2,
  gainLimit: 60,
  smoothingReach: 4,
};

/** Keeps logarithms and quotients finite; far under the power of one 16-bit step. */
const leastPower = 1e-10;

export class NoiseTracker {
  private power: Float64Array | undefined;
  private readonly noise = new Float64Array(bandCount);
  private readonly floor = new Float64Array(bandCount);
  private readonly peak = new Float64Array(bandCount);
  private frames = 0;
  constructor(private readonly tuning: NoiseTuning = noiseTuning) {}

  /**
   * @param bands power of the frame in each band; call once for each frame, in order
   * @returns the factor of power to apply to each band
   */
  next(bands: Float64Array): Float64Array {
    const { powerMemory, riseMemory, fallMemory, subtraction, maskMemory, maskShare, gainLimit } =
      this.tuning;
    if (!this.power) {
      this.power = bands.slice();
      this.noise.set(bands);
      bands.forEach((value, i) => {
        this.floor[i] = value / gainLimit;
      });
    }
    this.frames++;
    const power = this.power;
    const gains = new Float64Array(bandCount);
    // A new tracker learns at once, then ever more slowly.
    const rise = Math.min(riseMemory, 1 - 1 / (this.frames + 1));
    for (let i = 0; i < bandCount; i++) {
      power[i] = powerMemory * (power[i] as number) + (1 - powerMemory) * (bands[i] as number);
      const p = power[i] as number;
      this.noise[i] = envelope(this.noise[i] as number, p, rise, fallMemory);
      let signal = Math.max(p - subtraction * (this.noise[i] as number), leastPower);
      this.floor[i] = envelope(this.floor[i] as number, signal, riseMemory, fallMemory);
      const peak = (this.peak[i] as number) * maskMemory;
      this.peak[i] = Math.max(peak, signal);
      if (signal < maskMemory * peak) signal = peak * maskShare;
      signal = Math.max(signal, this.floor[i] as number);
      gains[i] = Math.max(1 / gainLimit, Math.min(gainLimit, signal / (p + leastPower)));
    }
    return smooth(gains, this.tuning.smoothingReach);
  }
}

function envelope(level: number, value: number, rise: number, fall: number): number {
  const memory = value >= level ? rise : fall;
  return memory * level + (1 - memory) * value;
}

function smooth(gains: Float64Array, reach: number): Float64Array {
  return gains.map((_, i) => {
    const near = gains.subarray(Math.max(0, i - reach), i + reach + 1);
    return near.reduce((sum, gain) => sum + gain, 0) / near.length;
  });
}
