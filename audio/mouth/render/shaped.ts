import { activeLevel } from '../active-level.ts';
import { SPEECH_DBFS, speechSpan } from '../speech-span.ts';
import { filtered, highPass, peak } from './biquad.ts';
import { limited } from './limiter.ts';
import type { VOICE_SETTINGS } from './voice-settings.ts';

/** Ends fainter than this are cut off: a little more than a player will, so that it finds all that was kept. */
const TRIM_DBFS = SPEECH_DBFS + 4;
/** Rounds of levelling: the limiter takes a little level away, which the next round puts back. */
const LEVELLING_ROUNDS = 4;

/**
 * Makes a synthesised utterance fit for a noisy shed: boom out, consonants lifted, silence off both ends, every
 * clip at the same active level and under the same peak.
 * @returns the speech, or undefined where the synthesiser produced none
 */
export function shaped(raw: Float32Array, settings: typeof VOICE_SETTINGS): Float32Array | undefined {
  const { sampleRateHz, highPassHz, chestDip, presenceLift, levelDbfs, peakDbfs, limiterAttackS } = settings;
  let speech = filtered(raw, highPass(highPassHz, Math.SQRT1_2, sampleRateHz));
  for (const { centreHz, q, gainDb } of [chestDip, presenceLift]) {
    speech = filtered(speech, peak(centreHz, q, gainDb, sampleRateHz));
  }
  for (let round = 0; round < LEVELLING_ROUNDS; round++) {
    const { levelDbfs: now } = activeLevel(speech, sampleRateHz);
    if (!Number.isFinite(now)) return undefined;
    const gain = 10 ** ((levelDbfs - now) / 20);
    const louder = limited(
      speech.map((sample) => sample * gain),
      10 ** (peakDbfs / 20),
      sampleRateHz,
      limiterAttackS,
    );
    const span = speechSpan(louder, sampleRateHz, TRIM_DBFS);
    if (span === undefined) return undefined;
    speech = louder.slice(span.start, span.end);
  }
  return withSoftEnds(speech, sampleRateHz);
}

/** Ramps the first and last milliseconds so that a cut in the synthesiser's noise floor makes no click. */
function withSoftEnds(samples: Float32Array, sampleRateHz: number): Float32Array {
  const ramp = Math.min(Math.round(0.004 * sampleRateHz), Math.floor(samples.length / 2));
  return samples.map(
    (sample, at) => sample * Math.min(1, (at + 0.5) / ramp, (samples.length - at - 0.5) / ramp),
  );
}
