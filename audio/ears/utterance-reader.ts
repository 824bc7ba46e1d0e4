import { CLEAR_UNKNOWN_WORD, clearFromDb, DECOY_WORD } from '../command-model/decode-protocol.ts';
import { prepareUtterance } from '../command-model/listening/prepare-utterance.ts';
import { readWords } from '../field-model/read-words.ts';
import { type DecodedWord, UNKNOWN } from './heard-words.ts';
import type { Recogniser } from './recogniser.ts';
import { type SpeechSpan, wordsWithin } from './utterance.ts';

/** What an utterance was decoded to: the words within its speech, and where in the decoded sound that speech lies. */
export interface Reading {
  readonly words: readonly DecodedWord[];
  readonly span: SpeechSpan;
}

/** An utterance being decoded. */
export interface PendingReading {
  /** Undefined when it was dropped, or when the recogniser died; its owner has been told of that. */
  readonly reading: Promise<Reading | undefined>;
  /** Frees its recogniser before it is done. */
  drop(): void;
}

/**
 * Cleans an utterance of the room's noise and decodes it with a recogniser session of its own.
 * @param sound the room, the speech and what came after, at the ears' rate
 * @param from first sample of the speech in `sound`
 * @param to the sample behind its last
 * @param doubt whether clear speech has to fit better; not for a stop call, which is mixed with our own echo and
 *   must rather be heard wrongly than missed
 * @returns undefined when the list cannot be listened for
 */
export function readUtterance(
  recogniser: Recogniser,
  list: readonly string[],
  sound: Float32Array,
  from: number,
  to: number,
  doubt: 'where clear' | 'never' = 'where clear',
): PendingReading | undefined {
  if (recogniser.model.graph === 'words') return readWords(recogniser, list, sound, from, to);
  const prepared = prepareUtterance(sound, Math.max(0, from), to);
  const opened = recogniser.open(doubt === 'never' ? list : listFor(list, prepared.speechOverRoomDb));
  if (!opened.ok) return undefined;
  const { session } = opened;
  const span = { startMs: prepared.speechStartMs, endMs: prepared.speechEndMs };
  const reading = session.decode(prepared.samples).then((decoded) => {
    session.dispose();
    return decoded.ok ? { words: wordsWithin(plainlyNamed(decoded.words), span), span } : undefined;
  });
  return { reading, drop: () => session.dispose() };
}

const UNKNOWN_KINDS: readonly string[] = [CLEAR_UNKNOWN_WORD, DECOY_WORD];

/** The list to decode with: clear speech must fit a phrase better to be taken for it. */
export function listFor(list: readonly string[], speechOverRoomDb: number): readonly string[] {
  return [...list, DECOY_WORD, ...(speechOverRoomDb >= clearFromDb ? [CLEAR_UNKNOWN_WORD] : [])];
}

/** The words with one name for unknown speech. */
export function plainlyNamed(words: readonly DecodedWord[]): readonly DecodedWord[] {
  return words.map((each) => (UNKNOWN_KINDS.includes(each.word) ? { ...each, word: UNKNOWN } : each));
}
