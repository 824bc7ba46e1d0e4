import { type HearingGrade, worseOf } from '../../grammar/hearing-grade.ts';
import { hearingAfter, isHeardEnough, UNHEARD } from './hearing-quality.ts';

/** Loudness of what the microphone hears. 0 dBFS is a root mean square of 1, so a full-scale sine reads -3.01. */

/** The quietest level told apart: under one 16-bit step. Also the level of digital silence, whose logarithm has none. */
export const SILENCE_DBFS = -100;

/** Root mean square of samples in decibels of full scale; {@link SILENCE_DBFS} for silence or no samples. */
export function rmsDbfs(samples: Float32Array): number {
  return powerToDb(meanPower(samples));
}

/** Mean square of samples; 0 when there are none. */
export function meanPower(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return samples.length === 0 ? 0 : sum / samples.length;
}

/** A power relative to full scale as decibels, not under {@link SILENCE_DBFS}. */
export function powerToDb(power: number): number {
  return power > 0 ? Math.max(SILENCE_DBFS, 10 * Math.log10(power)) : SILENCE_DBFS;
}

/**
 * Signal-to-noise ratio in decibels, from the level of speech in noise and of the noise alone: powers add, so the noise
 * is taken out of the mixture first. -20 where the mixture is no louder than the noise.
 */
export function snrDb(speechInNoiseDbfs: number, noiseDbfs: number): number {
  const excess = 10 ** ((speechInNoiseDbfs - noiseDbfs) / 10) - 1;
  return excess > 0.01 ? 10 * Math.log10(excess) : -20;
}

/** The meter's reading after a block. */
export interface LevelReading {
  /** This block, dBFS. */
  readonly dbfs: number;
  /** The room without speech, dBFS. */
  readonly floorDbfs: number;
  /** The voice last understood over the room as it is now, or a usual voice before any, decibels. */
  readonly snrDb: number;
  /** Missing for the first second, in which nothing is known of the room. */
  readonly hearing?: HearingGrade;
}

/** Level taken for speech before any was understood, dBFS: a raised voice at arm's length. Expert estimate. */
const EXPECTED_SPEECH_DBFS = -26;

/** Utterances whose middle one is the voice's level: one shout or one mumble does not move it. */
const VOICE_UTTERANCES = 3;

/**
 * A voice that much fainter than the one last understood may be somebody else's, decibels. From raised to normal speech it is
 * 6 (ISO 9921, annex A, from memory), and as much for twice the distance; half turned away costs some 3.
 */
const FAINT_BY_DB = 8;

/** Blocks the floor looks back on, 5 s of 100 ms blocks: longer than any phrase, so speech cannot become the floor. */
const FLOOR_BLOCKS = 50;

/**
 * Of what was heard before our own voice spoke only so much is kept, 400 ms: an engine that started meanwhile is known 2 s
 * later, and whoever answers at once is not taken for the room.
 */
const KEPT_OVER_A_GAP_BLOCKS = 4;

/** The floor is this share of the way up the sorted blocks: low enough that speech in most of them does not lift it. */
const FLOOR_SHARE = 0.2;

/** Meter of loudness, of the voice over the room's noise, and of how well that can be heard, over 100 ms blocks. */
export class LevelMeter {
  #recentDbfs: readonly number[] = [];
  #voiceDbfs: readonly number[] = [];
  #quality = UNHEARD;
  readonly #best: HearingGrade;

  /** @param best what the hearing is called at most, for sound whose loudness is not to be believed */
  constructor(best: HearingGrade = 'good') {
    this.#best = best;
  }

  /** Takes a block of the microphone's sound. */
  take(samples: Float32Array): LevelReading {
    const dbfs = rmsDbfs(samples);
    this.#recentDbfs = [...this.#recentDbfs, dbfs].slice(-FLOOR_BLOCKS);
    const { floorDbfs } = this;
    const ratioDb = (middleOf(this.#voiceDbfs) ?? EXPECTED_SPEECH_DBFS) - floorDbfs;
    this.#quality = hearingAfter(this.#quality, ratioDb);
    const { hearing } = this;
    return { dbfs, floorDbfs, snrDb: ratioDb, ...(hearing ? { hearing } : {}) };
  }

  /** Goes on after a time in which the room was not heard. */
  resume(): void {
    this.#recentDbfs = this.#recentDbfs.slice(-KEPT_OVER_A_GAP_BLOCKS);
  }

  /**
   * Takes the loudness of words that were understood. Other talk and knocks are not the voice to be heard.
   * @param speechInNoiseDbfs as the microphone had it, the room's noise in it
   */
  takeVoice(speechInNoiseDbfs: number): void {
    this.#voiceDbfs = [...this.#voiceDbfs, this.#withoutRoom(speechInNoiseDbfs)].slice(-VOICE_UTTERANCES);
  }

  /**
   * Whether speech is much fainter than the voice that was understood before. Never before as many utterances as make a
   * voice.
   */
  isFaint(speechInNoiseDbfs: number): boolean {
    const usualDbfs = middleOf(this.#voiceDbfs);
    if (usualDbfs === undefined || this.#voiceDbfs.length < VOICE_UTTERANCES) return false;
    return this.#withoutRoom(speechInNoiseDbfs) < usualDbfs - FAINT_BY_DB;
  }

  #withoutRoom(speechInNoiseDbfs: number): number {
    return this.floorDbfs + snrDb(speechInNoiseDbfs, this.floorDbfs);
  }

  /** How well the ears hear now; undefined for the first second. */
  get hearing(): HearingGrade | undefined {
    return isHeardEnough(this.#quality) ? worseOf(this.#quality.grade, this.#best) : undefined;
  }

  /** The room without speech as known now, dBFS; {@link SILENCE_DBFS} before the first block. */
  get floorDbfs(): number {
    return sortedAt(this.#recentDbfs, FLOOR_SHARE) ?? SILENCE_DBFS;
  }
}

function middleOf(levels: readonly number[]): number | undefined {
  return sortedAt(levels, 0.5);
}

/** The level a share of the way up the sorted ones. */
function sortedAt(levels: readonly number[], share: number): number | undefined {
  return [...levels].sort((a, b) => a - b)[Math.floor(share * (levels.length - 1))];
}
