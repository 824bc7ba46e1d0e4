import { Cutter } from './cutter.ts';
import type { SoundBlock } from './front-end.ts';
import { joined } from './joined.ts';
import type { Recogniser } from './recogniser.ts';
import { ShoutDetector } from './shout-detector.ts';
import { LEVEL_SAMPLES } from './sound-format.ts';
import { marginOf } from './utterance.ts';
import { readUtterance } from './utterance-reader.ts';

/** Sound before a shout that it is cleaned with, in blocks of {@link LEVEL_SAMPLES}: the echo of our own voice. */
const BEFORE_SHOUT_BLOCKS = 20;

/** The longest shout and the pause that ends it, in blocks. */
const SHOUT_BLOCKS = 22;

/** A call is louder than its first and last sounds: these blocks beside the loud ones belong to it. */
const SOFT_BEFORE_BLOCKS = 2;
const SOFT_AFTER_BLOCKS = 1;

/** A shout must be nothing but a stop word, with this margin. */
const LEAST_MARGIN = 0.4;

/** Ears for the time while the mouth speaks: they hear stop words, and those only when called louder than the mouth. */
export class StopEars {
  readonly #words: readonly string[];
  readonly #onStop: (word: string) => void;
  readonly #blocks = new Cutter(LEVEL_SAMPLES);
  readonly #detector = new ShoutDetector();
  readonly #recent: Float32Array[] = [];
  #isShut = false;

  /** @param onStop called once, with the word */
  constructor(words: readonly string[], onStop: (word: string) => void) {
    this.#words = words;
    this.#onStop = onStop;
  }

  /** Takes what is heard next while the mouth speaks. */
  take({ heard }: SoundBlock, recogniser: Recogniser | undefined): void {
    for (const block of this.#blocks.cut(heard)) this.#takeBlock(block, recogniser);
  }

  #takeBlock(block: Float32Array, recogniser: Recogniser | undefined): void {
    this.#recent.push(block);
    if (this.#recent.length > BEFORE_SHOUT_BLOCKS + SHOUT_BLOCKS) this.#recent.shift();
    const shout = this.#detector.take(block);
    if (shout === undefined || recogniser === undefined) return;
    const blocks = this.#recent.length;
    const sound = joined(this.#recent);
    const from = (blocks - 1 - shout.firstBack - SOFT_BEFORE_BLOCKS) * LEVEL_SAMPLES;
    const to = (blocks - shout.lastBack + SOFT_AFTER_BLOCKS) * LEVEL_SAMPLES;
    void this.#understand(readUtterance(recogniser, this.#words, sound, from, to, 'never'));
  }

  async #understand(pending: ReturnType<typeof readUtterance>): Promise<void> {
    const reading = await pending?.reading;
    const word = reading?.words[0]?.word;
    if (this.#isShut || reading === undefined || word === undefined) return;
    const isStop = reading.words.length === 1 && this.#words.includes(word);
    if (!isStop || marginOf(reading.words, reading.span) < LEAST_MARGIN) return;
    this.shut();
    this.#onStop(word);
  }

  /** The mouth is done: what is still being decoded no longer counts. */
  shut(): void {
    this.#isShut = true;
  }
}
