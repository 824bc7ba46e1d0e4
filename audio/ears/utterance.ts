import type { HearingGrade } from '../../grammar/hearing-grade.ts';
import { edgeSlackMs } from '../command-model/decode-protocol.ts';
import { type DecodedWord, UNKNOWN } from './heard-words.ts';

/** A word of the active list within an utterance; times on the page's clock (`performance.now()`), milliseconds. */
export interface HeardWord {
  readonly word: string;
  readonly startAtMs: number;
  readonly endAtMs: number;
  readonly confidence: number;
}

/** One bounded piece of speech and what the recogniser made of it. */
export interface Utterance {
  /** The words joined by spaces, `[unk]` for speech that is none of the list; empty when nothing was recognised. */
  readonly text: string;
  readonly words: readonly HeardWord[];
  /** On the page's clock, milliseconds: first and last sound of the speech, and when it was decided to be over. */
  readonly startedAtMs: number;
  readonly endedAtMs: number;
  readonly decidedAtMs: number;
  /** Loudness of the speech, dBFS. */
  readonly levelDbfs: number;
  /** Speech over the room, decibels. */
  readonly snrDb: number;
  /** How well the ears heard when it was said. */
  readonly hearing: HearingGrade;
  /**
   * Evidence that it is what it says, 0 to 1: see {@link marginOf}. Good for asking back sooner; never enough by itself to
   * act on a phrase that safety hangs on.
   */
  readonly margin: number;
}

/** Where detected speech lies in what was decoded, milliseconds since its first sample. */
export interface SpeechSpan {
  readonly startMs: number;
  readonly endMs: number;
}

/** A word must lie in the speech with this share of its length. */
const LEAST_SHARE_INSIDE = 0.5;

/** An unknown sound shorter than this is a breath or a click at the edge of the phrase, not a word beside it. */
const SHORTEST_UNKNOWN_MS = 250;

/**
 * The words that were really said: those that begin within the detected speech and lie mostly inside it. A recogniser hangs
 * phrases on noise before and after; none of that counts.
 */
export function wordsWithin(words: readonly DecodedWord[], speech: SpeechSpan): readonly DecodedWord[] {
  return words.filter((word) => {
    const lengthMs = word.endMs - word.startMs;
    if (word.startMs < speech.startMs - edgeSlackMs || word.startMs >= speech.endMs) return false;
    if (overlapMs(word, speech) < LEAST_SHARE_INSIDE * lengthMs) return false;
    return word.word !== UNKNOWN || lengthMs >= SHORTEST_UNKNOWN_MS;
  });
}

/**
 * Detected speech may be longer than what was said by this much, milliseconds: a breath before it, the room's answer after it.
 */
const SPEECH_UNSURE_MS = 200;

/**
 * What words said much more faintly than the ones before can prove at most: enough to be asked back, too little to be acted
 * upon. They may be somebody else's, further off.
 */
const MOST_WHERE_FAINT = 0.7;

/**
 * How well the words account for the speech, 0 to 1: the least sure word's posterior times the share of the speech that
 * known words cover. A phrase hung on part of a longer sentence covers little of it; speech that is nothing on the list
 * covers none.
 * @param isFaint whether it was said much more faintly than what was understood before
 */
export function marginOf(words: readonly DecodedWord[], speech: SpeechSpan, isFaint = false): number {
  const known = words.filter((word) => word.word !== UNKNOWN);
  if (known.length === 0) return 0;
  const coveredMs = known.reduce((sum, word) => sum + overlapMs(word, speech), 0);
  const spokenMs = Math.max(1, speech.endMs - speech.startMs - SPEECH_UNSURE_MS);
  const leastSure = Math.min(...known.map((word) => word.confidence));
  const margin = clampToOne(leastSure) * clampToOne(coveredMs / spokenMs);
  return isFaint ? Math.min(MOST_WHERE_FAINT, margin) : margin;
}

function overlapMs(word: DecodedWord, speech: SpeechSpan): number {
  return Math.max(0, Math.min(word.endMs, speech.endMs) - Math.max(word.startMs, speech.startMs));
}

function clampToOne(share: number): number {
  return Math.min(1, Math.max(0, share));
}
