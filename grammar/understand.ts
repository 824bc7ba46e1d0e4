import nlp from 'compromise';
import { type CalendarDay, readDay } from './calendar.ts';
import { UNKNOWN_WORD } from './compile.ts';
import { activeMeanings, type Expecting } from './expecting.ts';
import { type MeaningId, type Phrase, phrasesFor, riskOf, type ValueMeaning } from './lexicon.ts';
import {
  type Measurement,
  type MissCount,
  readCount,
  readMeasurement,
  readMissCount,
} from './measurements.ts';
import type { NamedPart } from './named-parts.ts';
import { READING_LINES, type Reading } from './reading.ts';
import type { Side } from './sides.ts';

/** What a meaning carries beside itself. */
export interface Slots {
  readonly side?: Side;
  readonly part?: NamedPart;
  readonly measurement?: Measurement;
  readonly missCount?: MissCount;
  readonly count?: number;
  readonly day?: CalendarDay;
}

export type Understanding =
  | {
      readonly outcome: 'understood';
      readonly meaning: MeaningId;
      readonly slots: Slots;
      readonly words: string;
    }
  | { readonly outcome: 'ambiguous'; readonly candidates: readonly MeaningId[]; readonly words: string }
  | {
      readonly outcome: 'refused';
      readonly reason: Refusal;
      /** What is wrong with a value, in a sentence that is spoken. */
      readonly sentence?: string;
      readonly words: string;
    };

export type Refusal =
  /** Nothing but silence or noise. */
  | 'nothing'
  /** Words, but none that mean anything here. */
  | 'otherTalk'
  /** A phrase of this state with other words around it. */
  | 'leftOver'
  /** A number that does not read as one, or has the wrong unit. */
  | 'value';

/** Less evidence than this is a phrase hung on a part of other talk, or one as likely as its neighbour: chosen by measurement. */
const LEAST_MARGIN = 0.5;

/**
 * Takes what the recogniser heard to a meaning, or refuses.
 *
 * A bounded utterance yields one meaning. Words beside the phrase count against it: for anything but a
 * phrase that voids a lockout they make a refusal, since a repair could turn "it is not in my pocket" into
 * its opposite. Where there is no lockout to void, that goes for those too, "stop" left out: other talk is full of "wait a
 * minute". Two different meanings in one utterance are a question back, never a guess.
 *
 * @param heard what came back from the recogniser: graph words ("the_key_is_in_my_pocket"), ordinary words
 *   or both, and "[unk]" for what it did not know
 * @param margin evidence that it is what it says, 0 to 1; what is under {@link LEAST_MARGIN} only voids a lockout or stops
 */
export function understand(heard: string, expecting: Expecting, margin = 1): Understanding {
  const words = heard.replaceAll('_', ' ').trim().replace(/\s+/g, ' ');
  if (words === '') return { outcome: 'refused', reason: 'nothing', words };

  const active = activeMeanings(expecting);
  const { found, leftOver } = segment(words, active.flatMap(phrasesFor));

  const voiding = found.find(({ meaning }) => isTakenLightly(meaning, expecting));
  if (voiding && !isDenied(leftOver)) {
    return { outcome: 'understood', meaning: voiding.meaning, slots: {}, words };
  }
  if (margin < LEAST_MARGIN) return { outcome: 'refused', reason: 'otherTalk', words };
  const meanings = [...new Set(found.map((phrase) => phrase.meaning))];
  if (meanings.length > 1) return { outcome: 'ambiguous', candidates: meanings, words };

  const only = found[0];
  if (only && leftOver.length > 0) return { outcome: 'refused', reason: 'leftOver', words };
  if (only)
    return {
      outcome: 'understood',
      meaning: only.meaning,
      slots: {
        ...(only.side ? { side: only.side } : {}),
        ...(only.part ? { part: only.part } : {}),
      },
      words,
    };
  return expecting.value
    ? understandValue(words, expecting.value)
    : { outcome: 'refused', reason: 'otherTalk', words };
}

function understandValue(words: string, value: NonNullable<Expecting['value']>): Understanding {
  if (words.split(' ').every((word) => word === UNKNOWN_WORD))
    return { outcome: 'refused', reason: 'otherTalk', words };
  switch (value.kind) {
    case 'measurement':
      return taken('value.measured', readMeasurement(words, value.dimension), words, (measurement) => ({
        measurement,
      }));
    case 'count':
      return taken('value.count', readCount(words), words, (count) => ({ count }));
    case 'missCount':
      return taken('value.missRate', readMissCount(words), words, (missCount) => ({ missCount }));
    case 'day':
      return taken('value.day', readDay(words), words, (day) => ({ day }));
  }
}

function taken<T>(
  meaning: ValueMeaning,
  reading: Reading<T>,
  words: string,
  slotsOf: (value: T) => Slots,
): Understanding {
  return reading.ok
    ? { outcome: 'understood', meaning, slots: slotsOf(reading.value), words }
    : { outcome: 'refused', reason: 'value', sentence: READING_LINES[reading.why], words };
}

/** Cuts an utterance into the longest phrases it contains, in order; words that belong to none are left over. */
function segment(words: string, phrases: readonly Phrase[]): { found: Phrase[]; leftOver: string[] } {
  const longestFirst = [...phrases].sort((a, b) => b.words.length - a.words.length);
  const found: Phrase[] = [];
  const leftOver: string[] = [];
  let rest = words;
  while (rest !== '') {
    const phrase = longestFirst.find(({ words: said }) => rest === said || rest.startsWith(`${said} `));
    const taken = phrase?.words ?? rest.split(' ', 1)[0] ?? rest;
    if (phrase) found.push(phrase);
    else leftOver.push(taken);
    rest = rest.slice(taken.length).trimStart();
  }
  return { found, leftOver };
}

/** Whether a meaning is taken from the middle of other talk and on little evidence, since missing it costs a hand. */
function isTakenLightly(meaning: MeaningId, { nothingToVoid }: Expecting): boolean {
  return meaning === 'stop' || (riskOf(meaning) === 'void' && !nothingToVoid);
}

function isDenied(words: readonly string[]): boolean {
  return nlp(words.filter((word) => word !== UNKNOWN_WORD).join(' ')).has('#Negative');
}
