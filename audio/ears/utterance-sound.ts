import { roomBeforeMs } from '../command-model/decode-protocol.ts';
import type { SoundBlock } from './front-end.ts';
import { joined } from './joined.ts';
import { RoomMemory } from './room-memory.ts';
import { BLOCK_SAMPLES, msToSamples } from './sound-format.ts';

/**
 * Blocks held back from the room memory. The start of speech is noticed up to 800 ms late, and a voice in the room memory would be
 * taken for noise.
 */
const HELD_BACK_BLOCKS = Math.ceil(msToSamples(900) / BLOCK_SAMPLES);

/** A stretch of sound and where the microphone's samples lie in it. */
export interface SoundSoFar {
  /** As words are decoded from it. */
  readonly samples: Float32Array;
  /** Position in `samples` of a sample of the microphone's stream, which must lie in the part without gaps. */
  indexOf(microphoneSample: number): number;
}

/**
 * Gathers the sound of one utterance: the room before it, which may be from before our own voice spoke, then everything since
 * speech came near.
 */
export class UtteranceSound {
  readonly #room = new RoomMemory(roomBeforeMs);
  #near: SoundBlock[] = [];
  #isSpeech = false;
  /** The microphone's position behind the last block taken. */
  #position = 0;

  /** How much of the room is known, milliseconds. */
  get roomMs(): number {
    return this.#room.heldMs;
  }

  /**
   * Takes the next block.
   * @param isSpeech whether speech was going on at its end
   * @param position the microphone's position behind it
   */
  take(block: SoundBlock, isSpeech: boolean, position: number): void {
    this.#position = position;
    this.#isSpeech ||= isSpeech;
    this.#near.push(block);
    if (this.#isSpeech) return;
    for (const past of this.#near.splice(0, this.#near.length - HELD_BACK_BLOCKS)) {
      this.#room.add(past.mixed);
    }
  }

  /** All of it up to now. */
  soFar(): SoundSoFar {
    const samples = joined([this.#room.recall(), ...this.#near.map(({ mixed }) => mixed)]);
    const end = this.#position;
    return { samples, indexOf: (sample) => samples.length - (end - sample) };
  }

  /** As the microphone had it between two of its samples, of the part without gaps: for its loudness. */
  heardBetween(startSample: number, endSample: number): Float32Array {
    const samples = joined(this.#near.map(({ heard }) => heard));
    const first = this.#position - samples.length;
    return samples.subarray(Math.max(0, startSample - first), Math.max(0, endSample - first));
  }

  /** Drops the utterance; the room is kept. */
  clear(): void {
    this.#near = [];
    this.#isSpeech = false;
  }

  /** Drops the room too: it may be another one. */
  forgetRoom(): void {
    this.clear();
    this.#room.clear();
  }
}
