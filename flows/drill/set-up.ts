import { type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import { type Say, sayDigits } from '../../grammar/say.ts';
import type { HeardEvent } from '../heard.ts';
import type { Prompt } from '../prompt.ts';
import { type DrillSetup, LARGEST_SEED } from './hidden-fault.ts';
import { DRILL_LEVELS, type DrillLevel, LEVELS } from './levels.ts';
import { SET_UP_LINES } from './lines.ts';

/** A drill being set up aloud: its level, its number, and whether both were heard rightly. */
export type SetUp =
  | { readonly at: 'level' }
  | { readonly at: 'number'; readonly level: DrillLevel; readonly isNumberWrong?: boolean }
  | { readonly at: 'accepting'; readonly setup: DrillSetup }
  | { readonly at: 'ready'; readonly setup: DrillSetup };

export const NEW_SET_UP: SetUp = { at: 'level' };

/** What each level is asked for by. */
export const LEVEL_MEANINGS = {
  1: 'drill.levelOne',
  2: 'drill.levelTwo',
  3: 'drill.levelThree',
  4: 'drill.levelFour',
} as const satisfies Readonly<Record<DrillLevel, MeaningId>>;

/**
 * The set-up after something said, or undefined where it does not take that.
 * @param anyNumber a number for whoever wants any, 0 to {@link LARGEST_SEED}
 */
export function setUpAfter(
  setUp: SetUp,
  { type: meaning, slots }: Pick<HeardEvent, 'type' | 'slots'>,
  anyNumber: () => number,
): SetUp | undefined {
  switch (setUp.at) {
    case 'level': {
      const level = DRILL_LEVELS.find((each) => LEVEL_MEANINGS[each] === meaning);
      return level && { at: 'number', level };
    }
    case 'number': {
      if (meaning === 'goBack') return NEW_SET_UP;
      if (meaning === 'drill.anyNumber')
        return { at: 'accepting', setup: { level: setUp.level, seed: anyNumber() } };
      if (meaning !== 'value.count' || slots.count === undefined) return undefined;
      return isSeed(slots.count)
        ? { at: 'accepting', setup: { level: setUp.level, seed: slots.count } }
        : { ...setUp, isNumberWrong: true };
    }
    case 'accepting':
      if (meaning === 'yes') return { at: 'ready', setup: setUp.setup };
      return meaning === 'no' || meaning === 'goBack' ? NEW_SET_UP : undefined;
    case 'ready':
      return undefined;
  }
}

/** Whether a number makes a drill. */
export function isSeed(number: number): boolean {
  return Number.isInteger(number) && number >= 0 && number <= LARGEST_SEED;
}

/** What the set-up asks, in the place of the job that has not begun. */
export function setUpPrompt(setUp: SetUp, job: Prompt): Prompt {
  const { notices, question, expecting } = asked(setUp);
  return {
    ...job,
    state: `drill.setUp.${setUp.at}`,
    notices,
    question,
    brief: question,
    why: [SET_UP_LINES.why],
    safety: 'keepOut',
    expecting,
  };
}

function asked(setUp: SetUp): Pick<Prompt, 'notices' | 'question' | 'expecting'> {
  switch (setUp.at) {
    case 'level':
      return {
        notices: [],
        question: [SET_UP_LINES.level],
        expecting: { meanings: DRILL_LEVELS.map((level) => LEVEL_MEANINGS[level]) },
      };
    case 'number':
      return {
        notices: setUp.isNumberWrong
          ? [SET_UP_LINES.noSuchNumber]
          : [ruleOf(LEVEL_MEANINGS[setUp.level]).readBack],
        question: [SET_UP_LINES.number],
        expecting: { meanings: ['drill.anyNumber'], value: { kind: 'count' } },
      };
    case 'accepting':
    case 'ready':
      return {
        notices: [LEVELS[setUp.setup.level].surroundings].filter((line) => line !== ''),
        question: [...saySetUp(setUp.setup), SET_UP_LINES.accept],
        expecting: { meanings: ['yes', 'no'] },
      };
  }
}

/** The level and the number, digit by digit: a wrong digit is another drill. */
export function saySetUp({ level, seed }: DrillSetup): Say {
  return [ruleOf(LEVEL_MEANINGS[level]).readBack, SET_UP_LINES.numberIs, ...sayDigits(seed)];
}
