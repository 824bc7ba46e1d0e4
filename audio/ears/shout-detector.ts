import { rmsDbfs } from './level.ts';
import { LEVEL_MS } from './sound-format.ts';

/**
 * Finds a call over our own voice: what the microphone hears of the mouth has a loudest level, and a person who wants it to stop
 * is louder. Anything softer is not told from the echo and is left alone; touch is for that.
 */

/** How far over the loudest echo a block must be, decibels, to begin a shout and to be still part of it. */
const BEGINS_OVER_DB = 6;
const GOES_ON_OVER_DB = 2;

/** Blocks from which the echo's level is learnt before anything counts. */
const LEARNING_BLOCKS = 500 / LEVEL_MS;

/** Blocks under the level that end a shout: the gap before a stop's burst, twice over, is no end. */
const ENDING_BLOCKS = 3;

/** A stop phrase takes 300 to 1,600 ms; shorter is a knock, longer is talk or a machine. */
const SHORTEST_BLOCKS = 200 / LEVEL_MS;
const LONGEST_BLOCKS = 1_800 / LEVEL_MS;

/** How fast the loudest echo is forgotten, decibels a block: a shout taken for echo must not deafen it for good. */
const FORGETS_DB = 0.1;

/** The detector; make a new one each time the mouth begins. */
export class ShoutDetector {
  #blocks = 0;
  #echoDbfs = Number.NEGATIVE_INFINITY;
  #loudBlocks = 0;
  #softBlocks = 0;
  /** The loudest block of what may be a shout, so far. */
  #loudestDbfs = Number.NEGATIVE_INFINITY;

  /**
   * Takes the next block of {@link LEVEL_MS}.
   * @returns the blocks of a shout that has just ended, counted back from this one (this one is 0): first and last
   */
  take(block: Float32Array): { readonly firstBack: number; readonly lastBack: number } | undefined {
    const dbfs = rmsDbfs(block);
    this.#blocks += 1;
    this.#echoDbfs -= FORGETS_DB;
    // The mouth may begin late. Then its own voice seems a shout at first; what rises over that as well is one.
    if (this.#loudBlocks >= LEARNING_BLOCKS && dbfs > this.#loudestDbfs + BEGINS_OVER_DB) {
      this.#giveUp(this.#loudestDbfs);
    }
    const over = this.#loudBlocks > 0 ? GOES_ON_OVER_DB : BEGINS_OVER_DB;
    const isLoud = this.#blocks > LEARNING_BLOCKS && dbfs > this.#echoDbfs + over;
    if (isLoud) {
      this.#loudestDbfs = this.#loudBlocks === 0 ? dbfs : Math.max(this.#loudestDbfs, dbfs);
      this.#loudBlocks += 1 + this.#softBlocks;
      this.#softBlocks = 0;
      if (this.#loudBlocks > LONGEST_BLOCKS) this.#giveUp(dbfs);
      return undefined;
    }
    if (this.#loudBlocks === 0) {
      this.#echoDbfs = Math.max(this.#echoDbfs, dbfs);
      return undefined;
    }
    this.#softBlocks += 1;
    if (this.#softBlocks < ENDING_BLOCKS) return undefined;
    const shout = { firstBack: this.#loudBlocks + this.#softBlocks - 1, lastBack: this.#softBlocks };
    const isLongEnough = this.#loudBlocks >= SHORTEST_BLOCKS;
    this.#loudBlocks = 0;
    this.#softBlocks = 0;
    return isLongEnough ? shout : undefined;
  }

  /** It was no shout: it is the new level of the echo. */
  #giveUp(dbfs: number): void {
    this.#echoDbfs = dbfs;
    this.#loudBlocks = 0;
    this.#softBlocks = 0;
  }
}
