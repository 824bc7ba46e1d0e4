import type { MeaningId } from '../../grammar/lexicon.ts';
import { counting, countOpening } from '../../grammar/phrases/counting.ts';
import { type Say, sayBand, sayMeasure, saySide, sayWhole } from '../../grammar/say.ts';
import { USUAL_CONFIDENCE } from '../figures/confidence.ts';
import { missRateInterval } from '../figures/miss-rate.ts';
import type { Prompt } from '../prompt.ts';
import { MOST_AT_ONCE } from './entry.ts';
import { type Pattern, patternsIn } from './patterns.ts';
import type { Tally } from './tally.ts';

/** Everything said while bales are counted, beside what is read back. Each has one recorded clip. */
export const COUNT_LINES = {
  bales: 'Bales:',
  missed: 'Missed:',
  say: 'Tell me each bale.',
  why: 'A pattern in the misses says where to look. It takes some bales until luck is ruled out.',
  noPattern: 'I see no pattern yet that luck could not make.',
  left: 'Most of the misses are on one side:',
  afterBallChange: 'They come after a ball change. Look at the splice and at the new ball.',
  denseCrop: 'They come in heavy or green crop. Look at the bale density and the twine holder.',
  tightBales: 'They come in bales that are set tighter. Look at the twine holder, and set them looser.',
  fullSpeed: 'They come at full shaft speed. Look at the timing and at the brakes.',
  gettingWorse: 'They are getting more. Something is wearing, or working loose.',
  byLuck: 'By luck alone that would come in',
  ofCases: 'of cases.',
  lessThan: 'less than',
  rate: 'With ninety-five percent confidence it misses between',
  to: 'to',
  percentOfBales: 'of bales.',
  countedBefore: 'You counted with me before the repair:',
  takeBefore: 'To use that, say: take the count from before.',
  countedSince: 'You counted with me since the repair:',
  firstOut: 'The first bale is left out.',
  takeTies: 'To use that, say: use the bales since the repair.',
  back: 'Back to the job.',
  noNumber: 'That is no number of bales I can take at once.',
  span: 'It has to be',
} as const;

/** What can be said while bales are counted, the likeliest first. */
export const COUNTING_MEANINGS = Object.keys(counting) as readonly (keyof typeof counting)[];

export const COUNT_OPENING = Object.keys(countOpening)[0] as keyof typeof countOpening;

/** Said of a number that is none of bales. */
export function sayNoNumber(): Say {
  return [COUNT_LINES.noNumber, COUNT_LINES.span, ...sayBand(1, MOST_AT_ONCE, 'bale')];
}

/** The bales so far: short, because it is said after each. */
export function sayTally({ bales, missedBales }: Tally): Say {
  if (bales.length === 0) return [COUNT_LINES.say];
  return [COUNT_LINES.bales, ...sayWhole(bales.length), COUNT_LINES.missed, ...sayWhole(missedBales)];
}

/** The patterns found, each with its chance, and how often it misses. */
export function sayPatterns(tally: Tally): Say {
  const { bales, missedBales } = tally;
  const patterns = patternsIn(tally);
  const interval =
    bales.length > 0 ? missRateInterval(missedBales, bales.length, USUAL_CONFIDENCE) : undefined;
  return [
    ...sayTally(tally),
    ...(patterns.length > 0 ? patterns.flatMap(sayPattern) : [COUNT_LINES.noPattern]),
    ...(interval
      ? [
          COUNT_LINES.rate,
          ...tenths(interval.lower),
          COUNT_LINES.to,
          ...tenths(interval.upper),
          COUNT_LINES.percentOfBales,
        ]
      : []),
  ];
}

/** The patterns found, if any, as the counting ends: nobody has to ask for what matters most. */
export function sayLeaving(tally: Tally): Say {
  return [...patternsIn(tally).flatMap(sayPattern), COUNT_LINES.back];
}

/** What is asked while the count has the floor; the job's own prompt stands behind it. */
export function countPrompt(tally: Tally, notices: Say, job: Prompt): Prompt {
  const question = sayTally(tally);
  return {
    state: 'count.bales',
    notices,
    question,
    brief: question,
    why: [COUNT_LINES.why],
    look: job.look,
    safety: job.safety,
    expecting: { meanings: COUNTING_MEANINGS as readonly MeaningId[], value: { kind: 'count' } },
  };
}

function sayPattern(pattern: Pattern): Say {
  const what: Say =
    pattern.kind === 'oneSide' ? [COUNT_LINES.left, ...saySide(pattern.side)] : [COUNT_LINES[pattern.kind]];
  return [...what, COUNT_LINES.byLuck, ...sayChance(pattern.chance), COUNT_LINES.ofCases];
}

function sayChance(chance: number): Say {
  return chance < 0.001
    ? [COUNT_LINES.lessThan, ...sayMeasure(0.1, 'percent', { decimals: 1 })]
    : tenths(chance);
}

function tenths(share: number): Say {
  return sayMeasure(100 * share, 'percent', { decimals: 1 });
}
