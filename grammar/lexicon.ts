import { NAMED_PART_IDS, NAMED_PARTS, type NamedPart } from './named-parts.ts';
import type { PhraseRule, Risk } from './phrase-rule.ts';
import { counting, countOpening, countUsing } from './phrases/counting.ts';
import { drilling } from './phrases/drilling.ts';
import { evidence } from './phrases/evidence.ts';
import { figures, labels } from './phrases/figures.ts';
import { findings } from './phrases/findings.ts';
import { hearing } from './phrases/hearing.ts';
import { lockout } from './phrases/lockout.ts';
import { moreAnswers, pointing } from './phrases/pointing.ts';
import { proving } from './phrases/proving.ts';
import { recalling } from './phrases/recalling.ts';
import { settings } from './phrases/settings.ts';
import { symptoms } from './phrases/symptoms.ts';
import { tying, tyingOpening } from './phrases/tying.ts';
import { universal } from './phrases/universal.ts';
import { values } from './phrases/values.ts';
import { voiding } from './phrases/voiding.ts';
import { type Side, SUBJECTS } from './sides.ts';
import { MISS_COUNTS, ROUND_NUMBERS, WHOLE_VALUES } from './value-phrases.ts';
import { DIGITS, TEENS, TENS, TWO_WORD_NUMBERS, VALUE_PHRASES, VALUE_WORDS } from './value-words.ts';

const RULES = {
  ...universal,
  ...voiding,
  ...lockout,
  ...symptoms,
  ...evidence,
  ...findings,
  ...proving,
  ...figures,
  ...labels,
  ...recalling,
  ...countOpening,
  ...counting,
  ...countUsing,
  ...pointing,
  ...moreAnswers,
  ...tyingOpening,
  ...tying,
  ...settings,
  ...hearing,
  ...drilling,
  ...values,
};

/** Every meaning a person can convey, by voice or by button. */
export type MeaningId = keyof typeof RULES;

export type VoidMeaning = keyof typeof voiding;
export type SymptomMeaning = keyof typeof symptoms;
export type FigureMeaning = keyof typeof figures;
export type RecallMeaning = keyof typeof recalling;
export type PointingMeaning = keyof typeof pointing;
export type SettingMeaning = keyof typeof settings;
export type HearingMeaning = keyof typeof hearing;
export type ValueMeaning = keyof typeof values;

/** One way of saying a meaning, with all notation expanded. */
export interface Phrase {
  /** Lower-case words with single spaces, as a dictionary has them. */
  readonly words: string;
  readonly meaning: MeaningId;
  readonly side?: Side;
  readonly part?: NamedPart;
}

export const MEANING_IDS = Object.keys(RULES) as readonly MeaningId[];
export const UNIVERSAL_MEANINGS = Object.keys(universal) as readonly (keyof typeof universal)[];
export const VOID_MEANINGS = Object.keys(voiding) as readonly VoidMeaning[];
export const SYMPTOM_MEANINGS = Object.keys(symptoms) as readonly SymptomMeaning[];

export const RECALL_MEANINGS = Object.keys(recalling) as readonly RecallMeaning[];
/** By place on the screen, the first first. */
export const POINTING_MEANINGS = Object.keys(pointing) as readonly PointingMeaning[];
export const SETTING_MEANINGS = Object.keys(settings) as readonly SettingMeaning[];
export const HEARING_MEANINGS = Object.keys(hearing) as readonly HearingMeaning[];
export const FIGURE_MEANINGS = Object.keys(figures) as readonly FigureMeaning[];

export function isMeaningId(text: string): text is MeaningId {
  return Object.hasOwn(RULES, text);
}

export function ruleOf(meaning: MeaningId): PhraseRule {
  return RULES[meaning];
}

export function riskOf(meaning: MeaningId): Risk {
  return RULES[meaning].risk;
}

/** The form prompts teach, which is also the words on its button. Empty for meanings that carry a number. */
export function taughtForm(meaning: MeaningId): string {
  return phrasesFor(meaning)[0]?.words ?? '';
}

const PHRASES_BY_MEANING: ReadonlyMap<MeaningId, readonly Phrase[]> = new Map(
  MEANING_IDS.map((meaning) => [
    meaning,
    isValueMeaning(meaning) ? [] : RULES[meaning].forms.flatMap((form) => expand(form, meaning)),
  ]),
);

/** All spoken forms of a meaning, the taught one first. */
export function phrasesFor(meaning: MeaningId): readonly Phrase[] {
  return PHRASES_BY_MEANING.get(meaning) ?? [];
}

/** Every phrase of the grammar; each becomes one word of the recogniser's graph. */
export function allPhrases(): readonly Phrase[] {
  return [...PHRASES_BY_MEANING.values()].flat();
}

/** Everything that is heard as one word, without repeats: {@link allPhrases} and the longer parts of values, for the builder of the recogniser's model. */
export function graphPhrases(): readonly string[] {
  return [...new Set([...allPhrases().map((phrase) => phrase.words), ...wholeValues()])];
}

function wholeValues(): readonly string[] {
  return [...VALUE_PHRASES, ...ROUND_NUMBERS, ...MISS_COUNTS, ...Object.values(WHOLE_VALUES).flat()];
}

/**
 * What is taken on less evidence than other phrases: whatever ends danger, since it must rather be heard wrongly than
 * missed, and values, since they are read back and must be accepted before they count.
 */
export function eagerWords(): readonly string[] {
  const voids = ['stop' as const, ...VOID_MEANINGS].flatMap(phrasesFor).map((phrase) => phrase.words);
  return [...new Set([...voids, ...wholeValues(), ...VALUE_WORDS])];
}

/** Numbers of one digit: the shortest, and said more than all others. */
export function digitWords(): readonly string[] {
  return ['zero', ...DIGITS];
}

/** Numbers that begin or sound like one digit: "eighty", "sixteen", "five hundred". They must show what is more of them. */
export function digitLikeNumbers(): readonly string[] {
  return [...TEENS.filter((teen) => teen.endsWith('teen')), ...TENS, ...TWO_WORD_NUMBERS, ...ROUND_NUMBERS];
}

/** Words that stay ordinary graph words because they combine freely: numbers, fractions, units. */
export function graphWords(): readonly string[] {
  return VALUE_WORDS;
}

function isValueMeaning(meaning: MeaningId): meaning is ValueMeaning {
  return Object.hasOwn(values, meaning);
}

function expand(form: string, meaning: MeaningId): Phrase[] {
  if (form.includes('{part}')) {
    return NAMED_PART_IDS.map((part) => ({
      words: form.replace('{part}', NAMED_PARTS[part]),
      meaning,
      part,
    }));
  }
  if (!form.includes('{subject}')) return [{ words: form, meaning }];
  return SUBJECTS.map(({ words, side }) => ({
    words: form.replace('{subject}', words),
    meaning,
    ...(side ? { side } : {}),
  }));
}
