/** Loudness of what the microphone hears. 0 dBFS is a root mean square of 1, so a full-scale sine reads -3.01. */

/** The quietest level told apart: under one 16-bit step. Also the level of digital silence, whose logarithm has none. */
export const SILENCE_DBFS = -100;

/** What the noise lets voice do, in the words shown and spoken. */
export type NoiseWord = 'good' | 'fair' | 'poor' | 'too loud';

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

/** Lowest ratio, in decibels, at which each word is earned. Expert estimate from the measured accuracy at each ratio. */
const EARNED_FROM_DB: readonly (readonly [NoiseWord, number])[] = [
  ['good', 20],
  ['fair', 10],
  ['poor', 5],
];

/** How far past a threshold the ratio has to move before the word changes, decibels: no flicker at the edge. */
const HYSTERESIS_DB = 1.5;

/**
 * The word for a ratio.
 * @param ratioDb signal to noise, decibels
 * @param before the word shown until now, if any: it is kept until its threshold is passed by {@link HYSTERESIS_DB}
 */
export function noiseWord(ratioDb: number, before?: NoiseWord): NoiseWord {
  if (before !== undefined) {
    const kept = range(before);
    if (ratioDb >= kept.fromDb - HYSTERESIS_DB && ratioDb < kept.toDb + HYSTERESIS_DB) return before;
  }
  return EARNED_FROM_DB.find(([, fromDb]) => ratioDb >= fromDb)?.[0] ?? 'too loud';
}

function range(word: NoiseWord): { readonly fromDb: number; readonly toDb: number } {
  const index = EARNED_FROM_DB.findIndex(([name]) => name === word);
  const at = index === -1 ? EARNED_FROM_DB.length : index;
  return {
    fromDb: EARNED_FROM_DB[at]?.[1] ?? Number.NEGATIVE_INFINITY,
    toDb: EARNED_FROM_DB[at - 1]?.[1] ?? Number.POSITIVE_INFINITY,
  };
}

/** The meter's reading after a block. */
export interface LevelReading {
  /** This block, dBFS. */
  readonly dbfs: number;
  /** The room without speech, dBFS. */
  readonly floorDbfs: number;
  /** Speech over the room: the last speech heard, or a usual voice at arm's length before any, decibels. */
  readonly snrDb: number;
  readonly noise: NoiseWord;
}

/** Level taken for speech before any was heard, dBFS: a raised voice at arm's length. Expert estimate. */
const EXPECTED_SPEECH_DBFS = -26;

/** Blocks the floor looks back on, 5 s of 100 ms blocks: longer than any phrase, so speech cannot become the floor. */
const FLOOR_BLOCKS = 50;

/** The floor is this share of the way up the sorted blocks: low enough that speech in most of them does not lift it. */
const FLOOR_SHARE = 0.2;

/** How fast the remembered level of speech follows a new block of speech. */
const SPEECH_FOLLOW = 0.2;

/** Meter of loudness, room noise and their ratio over 100 ms blocks. */
export class LevelMeter {
  readonly #recentDbfs: number[] = [];
  #speechDbfs: number | undefined;
  #word: NoiseWord | undefined;

  /**
   * Takes a block of the microphone's sound.
   * @param isSpeech what the speech detector says of it
   */
  take(samples: Float32Array, isSpeech: boolean): LevelReading {
    const dbfs = rmsDbfs(samples);
    this.#recentDbfs.push(dbfs);
    if (this.#recentDbfs.length > FLOOR_BLOCKS) this.#recentDbfs.shift();
    const floorDbfs = this.floorDbfs;
    if (isSpeech) {
      const before = this.#speechDbfs ?? dbfs;
      this.#speechDbfs = before + SPEECH_FOLLOW * (dbfs - before);
    }
    const ratioDb = snrDb(Math.max(this.#speechDbfs ?? EXPECTED_SPEECH_DBFS, SILENCE_DBFS), floorDbfs);
    this.#word = noiseWord(ratioDb, this.#word);
    return { dbfs, floorDbfs, snrDb: ratioDb, noise: this.#word };
  }

  /** The room without speech as known now, dBFS; {@link SILENCE_DBFS} before the first block. */
  get floorDbfs(): number {
    const sorted = [...this.#recentDbfs].sort((a, b) => a - b);
    return sorted[Math.floor(FLOOR_SHARE * (sorted.length - 1))] ?? SILENCE_DBFS;
  }
}
