import { prepareUtterance } from '../command-model/listening/prepare-utterance.ts';
import { type DecodedWord, UNKNOWN } from '../ears/heard-words.ts';
import type { Recogniser } from '../ears/recogniser.ts';
import { type SpeechSpan, wordsWithin } from '../ears/utterance.ts';
import type { PendingReading } from '../ears/utterance-reader.ts';
import { plainUtterance } from './plain-utterance.ts';
import { joinedToPhrase, wordEntries } from './word-list.ts';

/**
 * Decodes an utterance with a model of ordinary words.
 * @param list graph tokens, as for a model of phrases
 * @param sound the room, the speech and what came after, at the ears' rate
 * @param from first sample of the speech in `sound`
 * @param to the sample behind its last
 * @returns undefined when the list cannot be listened for
 */
export function readWords(
  recogniser: Recogniser,
  list: readonly string[],
  sound: Float32Array,
  from: number,
  to: number,
): PendingReading | undefined {
  const prepare = recogniser.model.frontEnd === 'cleaned' ? prepareUtterance : plainUtterance;
  const prepared = prepare(sound, Math.max(0, from), to);
  const opened = recogniser.open(wordEntries(list, (word) => recogniser.unknownIn([word]).length === 0));
  if (!opened.ok) return undefined;
  const { session } = opened;
  const span = { startMs: prepared.speechStartMs, endMs: prepared.speechEndMs };
  const reading = session.decode(prepared.samples).then((decoded) => {
    session.dispose();
    return decoded.ok ? { words: phraseWithin(decoded.words, list, span), span } : undefined;
  });
  return { reading, drop: () => session.dispose() };
}

/**
 * What was said, as a phrase of the list where it is one. Only other talk before and after the speech is left out, and a
 * phrase as a whole: a word taken out of the middle or off an end could turn an answer into its opposite.
 */
export function phraseWithin(
  words: readonly DecodedWord[],
  list: readonly string[],
  speech: SpeechSpan,
): readonly DecodedWord[] {
  const counts = ({ word, startMs, endMs }: DecodedWord) => {
    const middleMs = (startMs + endMs) / 2;
    return word !== UNKNOWN || (middleMs >= speech.startMs && middleMs < speech.endMs);
  };
  const said = words.slice(words.findIndex(counts), words.findLastIndex(counts) + 1);
  const joined = joinedToPhrase(said, list);
  return joined.length === 1 ? wordsWithin(joined, speech) : joined;
}
