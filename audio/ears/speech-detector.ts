import { bandPowers, SPECTRUM_SAMPLES } from './band-powers.ts';
import { joined } from './joined.ts';
import { LOUD_OVER_MEAN_WHEN_STEADY, loudAfter } from './loud-moments.ts';
import { EARS_RATE_HZ, msToSamples, samplesToMs } from './sound-format.ts';

/**
 * Finds where speech begins and ends in continuous sound, by how far each frequency band stands over the room's own noise:
 * the mean log-likelihood ratio of speech in noise against noise (J. Sohn, N. S. Kim, W. Sung, "A statistical model-based
 * voice activity detection", IEEE Signal Processing Letters 6(1), 1999), with each band's noise followed as it drifts. A
 * noise of loud moments, as of hail or a grinder, is taken for as much as those, not for its mean.
 */

/** What the detector reports. Positions are samples since the start of the stream. */
export type SpeechEvent =
  | { readonly type: 'started'; readonly startSample: number }
  | {
      readonly type: 'ended';
      readonly startSample: number;
      /** End of the last sound taken for speech; the decision falls later by the hangover. */
      readonly endSample: number;
      /** Why it ended. A cut is no phrase: it went on too long and is a machine or a conversation. */
      readonly because: 'quiet' | 'cut';
    };

/** Hangovers for the two kinds of phrase, milliseconds (VoiceXML's complete and incomplete timeouts). */
export const END_AFTER_COMPLETE_MS = 400;
export const END_AFTER_INCOMPLETE_MS = 1_200;

/** Pause after which an utterance is decoded, milliseconds, in case it is over. */
export const GUESS_AFTER_MS = 100;

/** Longest speech taken for one phrase, milliseconds. */
export const LONGEST_SPEECH_MS = 8_000;

/** The same until a second of quiet was heard, milliseconds: what sounds from the first moment on is rather the room. */
const LONGEST_BEFORE_QUIET_MS = 2_500;
const QUIET_HEARD_FRAMES = 100;

const HOP_SAMPLES = EARS_RATE_HZ / 100;
const HOP_MS = 10;

/** Band edges, about a third of an octave, over the range that carries speech; engines rumble under 200 Hz. */
const EDGES_HZ = [
  200, 300, 400, 510, 630, 770, 920, 1080, 1270, 1480, 1720, 2000, 2320, 2700, 3150, 3700, 4400, 5300, 6400,
];
const BANDS = EDGES_HZ.length - 1;

/**
 * No band's noise is taken for less than this, -72 dBFS over all bands. Sound without its noise has none left, and whatever is
 * faint would stand far over it: a breath, the room's answer, our own voice's echo. Words by people ended up to a second late.
 */
const LEAST_BAND_POWER = 3e-9;

/** Mean log-likelihood ratio over which a frame is voiced when quiet came before, and while speech goes on. */
const VOICED_TO_START = 0.33;
const VOICED_TO_GO_ON = 0.2;

/** No single band may count for more than this: a pure whistle is one band and no voice. */
const MOST_PER_BAND = 5;

/** Nor any single frame for more than this: a knock's loud frames must not ring on in the smoothed score. */
const MOST_PER_FRAME = 1.5;

/** How the score is smoothed from frame to frame. */
const SCORE_KEEP = 0.7;

/** Speech starts when this many of the last frames are voiced. */
const START_WINDOW_FRAMES = 20;
const START_VOICED_FRAMES = 12;

/**
 * Once speech is certain its beginning is sought backwards, through frames that would not have started it: in noise the
 * first sounds of a phrase are the faint ones. A stop of this many fainter frames ends the search.
 */
const LOOK_BACK_FRAMES = 80;
const VOICED_BEFORE_START = 0.1;
const LOOK_BACK_GAP_FRAMES = 12;

/** Share of a new frame in a band's noise: in quiet, and in speech where the band falls under its noise. */
const NOISE_FOLLOW = 0.04;
const NOISE_FALL_IN_SPEECH = 0.01;

/** How fast a band's noise may rise while speech seems to go on, decibels a second: a motor that starts is learnt. */
const NOISE_RISE_DB_PER_S = 1.5;
const NOISE_RISE_PER_FRAME = 10 ** (NOISE_RISE_DB_PER_S / 10 / 100);

/** Frames at the start of the stream taken as the room, whatever they hold. */
const LEARNING_FRAMES = 25;

interface SpeechInProgress {
  readonly startSample: number;
  lastVoicedSample: number;
  frames: number;
  /** Mean power of each band since the start: what the room becomes if this turns out to be the room. */
  readonly meanPower: Float64Array;
  /** And how loud its loud moments are then. */
  readonly loudPower: Float64Array;
}

/** The detector. One for a stream of sound; push every sample in order. */
export class SpeechDetector {
  #endAfterFrames = END_AFTER_COMPLETE_MS / HOP_MS;
  readonly #noise = new Float64Array(BANDS);
  /** How loud the loud moments of each band's noise are. */
  readonly #loud = new Float64Array(BANDS);
  #framesSeen = 0;
  #quietFrames = 0;
  /** Frames that may yet turn out to be the beginning of speech, the newest last; older ones are the room. */
  #undecided: Float64Array[] = [];
  #score = 0;
  #pending = new Float32Array(0);
  /** Position of the first pending sample. */
  #position = 0;
  /** Scores of the frames since the last speech, the newest last, as far as a start is sought back. */
  #recentScores: number[] = [];
  #speech: SpeechInProgress | undefined;

  /** Whether speech is going on, the hangover included. */
  get isSpeech(): boolean {
    return this.#speech !== undefined;
  }

  /** The quiet at the end of speech that goes on: since which sample, and how much of it there is. */
  get pause(): { readonly sinceSample: number; readonly ms: number } | undefined {
    if (this.#speech === undefined) return undefined;
    const sinceSample = this.#speech.lastVoicedSample;
    return { sinceSample, ms: samplesToMs(this.#position - sinceSample) };
  }

  /**
   * Sets how long quiet must last before speech counts as ended.
   * @param ms 100 to 3,000
   */
  endAfter(ms: number): void {
    if (!(ms >= 100 && ms <= 3_000)) {
      throw new RangeError(`Speech can be ended by 100 to 3,000 ms of quiet, not ${ms}.`);
    }
    this.#endAfterFrames = Math.round(ms / HOP_MS);
  }

  /** Goes on after a gap in the stream: what is known of the room stays, speech in progress is dropped unreported. */
  resumeAt(sample: number): void {
    this.#pending = new Float32Array(0);
    this.#position = sample;
    this.#speech = undefined;
    this.#recentScores = [];
    this.#undecided = [];
    this.#score = 0;
  }

  /** Takes the next samples, any number, and reports what was decided in them. */
  push(samples: Float32Array): SpeechEvent[] {
    const all = joined([this.#pending, samples]);
    const events: SpeechEvent[] = [];
    let at = 0;
    for (; at + SPECTRUM_SAMPLES <= all.length; at += HOP_SAMPLES) {
      const event = this.#frame(all.subarray(at, at + SPECTRUM_SAMPLES), this.#position + at);
      if (event !== undefined) events.push(event);
    }
    this.#pending = all.slice(at);
    this.#position += at;
    return events;
  }

  #frame(frame: Float32Array, firstSample: number): SpeechEvent | undefined {
    const powers = bandPowers(frame, EDGES_HZ).map((power) => Math.max(power, LEAST_BAND_POWER));
    this.#framesSeen += 1;
    if (this.#framesSeen <= LEARNING_FRAMES) {
      for (let band = 0; band < BANDS; band += 1) {
        const before = this.#noise[band] as number;
        this.#noise[band] = before + ((powers[band] as number) - before) / this.#framesSeen;
        this.#loud[band] = LOUD_OVER_MEAN_WHEN_STEADY * (this.#noise[band] as number);
      }
      return undefined;
    }
    this.#score = SCORE_KEEP * this.#score + (1 - SCORE_KEEP) * this.#likelihood(powers);
    const speech = this.#speech;
    const voiced = this.#score > (speech === undefined ? VOICED_TO_START : VOICED_TO_GO_ON);
    this.#followNoise(powers, voiced || speech !== undefined);
    const middle = firstSample + SPECTRUM_SAMPLES / 2;
    return speech === undefined
      ? this.#quiet(voiced, middle, powers)
      : this.#talking(speech, voiced, middle, powers);
  }

  /** Mean over the bands of the log-likelihood ratio, speech's own power taken as the most likely one. */
  #likelihood(powers: Float64Array): number {
    let sum = 0;
    for (let band = 0; band < BANDS; band += 1) {
      const room = Math.max(
        this.#noise[band] as number,
        (this.#loud[band] as number) / LOUD_OVER_MEAN_WHEN_STEADY,
      );
      const ratio = (powers[band] as number) / room;
      if (ratio > 1) sum += Math.min(MOST_PER_BAND, ratio - 1 - Math.log(ratio));
    }
    return Math.min(MOST_PER_FRAME, sum / BANDS);
  }

  #followNoise(powers: Float64Array, isSpeech: boolean): void {
    for (let band = 0; band < BANDS; band += 1) {
      const power = powers[band] as number;
      const noise = this.#noise[band] as number;
      if (!isSpeech) this.#noise[band] = noise + NOISE_FOLLOW * (power - noise);
      else if (power < noise) this.#noise[band] = noise + NOISE_FALL_IN_SPEECH * (power - noise);
      else this.#noise[band] = Math.min(power, noise * NOISE_RISE_PER_FRAME);
    }
  }

  #quiet(voiced: boolean, middle: number, powers: Float64Array): SpeechEvent | undefined {
    this.#quietFrames += 1;
    this.#undecided.push(powers);
    if (this.#undecided.length > START_WINDOW_FRAMES) {
      follow(this.#loud, this.#undecided.shift() as Float64Array);
    }
    this.#recentScores.push(this.#score);
    if (this.#recentScores.length > LOOK_BACK_FRAMES) this.#recentScores.shift();
    const window = this.#recentScores.slice(-START_WINDOW_FRAMES);
    if (!voiced || window.filter((score) => score > VOICED_TO_START).length < START_VOICED_FRAMES) {
      return undefined;
    }
    const startSample = Math.max(0, middle - framesBackToStart(this.#recentScores) * HOP_SAMPLES);
    this.#recentScores = [];
    this.#undecided = [];
    this.#speech = {
      startSample,
      lastVoicedSample: middle,
      frames: 1,
      meanPower: powers.slice(),
      loudPower: this.#loud.slice(),
    };
    return { type: 'started', startSample };
  }

  #talking(
    speech: SpeechInProgress,
    voiced: boolean,
    middle: number,
    powers: Float64Array,
  ): SpeechEvent | undefined {
    if (voiced) speech.lastVoicedSample = middle;
    speech.frames += 1;
    for (let band = 0; band < BANDS; band += 1) {
      const before = speech.meanPower[band] as number;
      speech.meanPower[band] = before + ((powers[band] as number) - before) / speech.frames;
    }
    follow(speech.loudPower, powers);
    const { startSample, lastVoicedSample: endSample } = speech;
    if ((middle - endSample) / HOP_SAMPLES >= this.#endAfterFrames) {
      this.#speech = undefined;
      return { type: 'ended', startSample, endSample, because: 'quiet' };
    }
    const longestMs = this.#quietFrames < QUIET_HEARD_FRAMES ? LONGEST_BEFORE_QUIET_MS : LONGEST_SPEECH_MS;
    if (middle - startSample >= msToSamples(longestMs)) {
      // Nobody answers that long: it is the room now.
      this.#noise.set(speech.meanPower);
      this.#loud.set(speech.loudPower);
      this.#speech = undefined;
      return { type: 'ended', startSample, endSample, because: 'cut' };
    }
    return undefined;
  }
}

/** Each band's loud moments after one more frame. */
function follow(loud: Float64Array, powers: Float64Array): void {
  for (let band = 0; band < BANDS; band += 1) {
    loud[band] = loudAfter(loud[band] as number, powers[band] as number);
  }
}

/** @param scores of the last frames, the newest last; speech is certain in the newest. @returns frames from it back to the first sound */
function framesBackToStart(scores: readonly number[]): number {
  let back = 0;
  for (let frames = 0; frames < scores.length; frames += 1) {
    const score = scores[scores.length - 1 - frames] as number;
    const isWithinWindow = frames < START_WINDOW_FRAMES && score > VOICED_TO_START;
    if (isWithinWindow || (score > VOICED_BEFORE_START && frames - back <= LOOK_BACK_GAP_FRAMES))
      back = frames;
  }
  return back;
}
