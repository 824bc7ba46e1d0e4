import { SECOND_LOOK } from '../../grammar/compile.ts';
import { CLEAR_UNKNOWN_WORD, clearFromDb, DECOY_WORD } from '../command-model/decode-protocol.ts';
import { type PreparedUtterance, prepareUtterance } from '../command-model/listening/prepare-utterance.ts';
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
 * @param doubt whether clear speech has to fit better, and what a lockout hangs on is looked at twice; not for a stop
 *   call, which is mixed with our own echo and must rather be heard wrongly than missed
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
  if (doubt === 'never') return decode(recogniser, list, prepared);
  const doubtful = (words: readonly string[]) => listFor(words, prepared.speechOverRoomDb);
  const first = decode(recogniser, doubtful(list), prepared);
  return first && lookedAtTwice(first, () => decode(recogniser, doubtful(SECOND_LOOK.amongst), prepared));
}

function decode(
  recogniser: Recogniser,
  list: readonly string[],
  { samples, speechStartMs, speechEndMs }: PreparedUtterance,
): PendingReading | undefined {
  const opened = recogniser.open(list);
  if (!opened.ok) return undefined;
  const { session } = opened;
  const span = { startMs: speechStartMs, endMs: speechEndMs };
  const reading = session.decode(samples).then((decoded) => {
    session.dispose();
    return decoded.ok ? { words: wordsWithin(plainlyNamed(decoded.words), span), span } : undefined;
  });
  return { reading, drop: () => session.dispose() };
}

/**
 * A phrase that a lockout hangs on is taken only where it is heard again amongst all that can be said; otherwise it was
 * something unknown.
 */
function lookedAtTwice(first: PendingReading, again: () => PendingReading | undefined): PendingReading {
  let underWay = first;
  let isDropped = false;
  const lookTwice = async (): Promise<Reading | undefined> => {
    const once = await first.reading;
    if (once === undefined || isDropped) return undefined;
    const phrase = onlyWord(once);
    if (phrase === undefined || !SECOND_LOOK.at.has(phrase)) return once;
    const second = again();
    if (second === undefined) return asUnknown(once);
    underWay = second;
    const twice = await second.reading;
    return twice && (onlyWord(twice) === phrase ? once : asUnknown(once));
  };
  return {
    reading: lookTwice(),
    drop() {
      isDropped = true;
      underWay.drop();
    },
  };
}

function asUnknown({ words, span }: Reading): Reading {
  return { words: words.map((each) => ({ ...each, word: UNKNOWN })), span };
}

function onlyWord({ words }: Reading): string | undefined {
  return words.length === 1 ? words[0]?.word : undefined;
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
