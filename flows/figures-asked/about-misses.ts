import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { baleOnOrStop } from '../figures/bale-on-or-stop.ts';
import { chanceNotTheBallChange } from '../figures/ball-change-test.ts';
import { chanceRepairChangedNothing } from '../figures/before-after.ts';
import { cleanTiesNeeded, tiesNeededForgivingOneMiss, upperBoundAfterClean } from '../figures/clean-ties.ts';
import { USUAL_CONFIDENCE } from '../figures/confidence.ts';
import type { Assumption } from '../figures/figure.ts';
import { chanceFixed } from '../figures/fixed-probability.ts';
import { judgeInSequence, type SequentialPlan } from '../figures/sequential-test.ts';
import { sideTest } from '../figures/side-test.ts';
import { SPLICE_WINDOW_BALES } from '../figures/splice-window.ts';
import { compareWithTarget, type TargetVerdict } from '../figures/target-rate.ts';
import { type FigureQuestion, type Given, percent } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import type { FigureAnswer } from './values.ts';

/** Chance that a repair cures, and the miss rate of a knotter that is cured. Expert estimates. */
const REPAIR_PRIOR = 0.7;
const CURED_RATE = 0.005;
/** Below this a lean or a clean run is taken as no luck; the customary line. */
const LUCK = 0.05;
const WRONG_CALL = 0.05;
/** A sequential plan longer than this is no use in a field. */
const LONGEST_RUN = 5000;

/** Misses: how often, which side, whether it is fixed, and whether to bale on. */
export const MISS_FIGURES = {
  'figure.missRate': {
    inputs: ['missCount'],
    answer: (given) => {
      const { misses, bales } = given.misses('missCount');
      const { interval, verdict, assumptions } = compareWithTarget(misses, bales, USUAL_CONFIDENCE);
      return {
        say: [
          LINES.itMisses,
          ...percent(misses / bales),
          LINES.ofCases,
          LINES.ninetyFive,
          LINES.between,
          ...percent(interval.lower),
          'to',
          ...percent(interval.upper),
          TARGET_LINES[verdict],
          LINES.grantedChance,
        ],
        assumptions,
      };
    },
  },
  'figure.whichSide': {
    inputs: ['leftMisses', 'rightMisses'],
    answer: (given) => {
      const { heavierSide, chanceOnEitherSide } = sideTest(
        given.number('leftMisses'),
        given.number('rightMisses'),
      );
      const lean = { left: LINES.leansLeft, right: LINES.leansRight, even: LINES.leansNowhere }[heavierSide];
      return {
        say: [
          lean,
          LINES.chanceOfLean,
          ...percent(chanceOnEitherSide),
          LINES.ofCases,
          chanceOnEitherSide < LUCK ? LINES.oneSideLikely : LINES.oneSideUnclear,
        ],
        assumptions: [
          { says: 'Each miss is as likely left as right if both knotters are alike.', standing: 'derived' },
        ],
      };
    },
  },
  'figure.ballChange': {
    inputs: ['balesPerBall', 'allMisses', 'missesAfterChange'],
    answer: (given) => {
      const chance = chanceNotTheBallChange(
        given.number('missesAfterChange'),
        given.number('allMisses'),
        given.number('balesPerBall'),
        SPLICE_WINDOW_BALES,
      );
      return {
        say: [
          LINES.chanceOfWindow,
          ...percent(chance),
          LINES.ofCases,
          chance < LUCK ? LINES.ballChangeLikely : LINES.ballChangeUnclear,
        ],
        assumptions: [
          {
            says: 'Without a bad splice, a miss may come anywhere along the ball alike.',
            standing: 'derived',
          },
        ],
      };
    },
  },
  'figure.fixed': {
    inputs: ['missCount', 'cleanTies'],
    answer: answerFixed,
  },
  'figure.cleanTies': {
    inputs: ['missCount'],
    answer: answerCleanTies,
  },
  'figure.baleOnOrStop': {
    inputs: ['dangerSign', 'missCount', 'balesToMake', 'minutesPerBroken', 'minutesToRepair'],
    answer: (given) => {
      const { misses, bales } = given.misses('missCount');
      const { decision, rework, repair } = baleOnOrStop({
        baleMissRate: misses / bales,
        balesLeft: given.number('balesToMake'),
        minutesPerBrokenBale: given.number('minutesPerBroken'),
        minutesToRepair: given.number('minutesToRepair'),
        safetyFault: given.chose('dangerSign') === 'yes',
      });
      const decisionLine = {
        'bale on': LINES.baleOn,
        'stop and mend': LINES.stopAndMend,
        'stop: this fault is not one to bale with': LINES.stopDanger,
      }[decision];
      return {
        say: [
          decisionLine,
          LINES.brokenCost,
          ...given.say(rework.value, 'minute'),
          LINES.repairCosts,
          ...given.say(repair.value, 'minute'),
          LINES.grantedNoWorse,
        ],
        assumptions: [...rework.assumptions, ...repair.assumptions],
      };
    },
  },
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;

const TARGET_LINES: Readonly<Record<TargetVerdict['verdict'], string>> = {
  'better than the target': LINES.betterThanTarget,
  'worse than the target': LINES.worseThanTarget,
  'too few ties to tell': LINES.tooFewToTell,
};

const EVERY_TIE_ALIKE: Assumption = {
  says: 'Every tie misses with the same chance, whatever came before it.',
  standing: 'derived',
};

const PRIOR_ASSUMED: Assumption = {
  says: 'Seven repairs in ten are the right one, and a cured knotter misses one tie in two hundred.',
  standing: 'expert estimate',
};

function answerFixed(given: Given): FigureAnswer {
  const { misses, bales } = given.misses('missCount');
  const clean = given.number('cleanTies');
  if (misses === 0) return { say: [LINES.noMiss], assumptions: [] };
  if (clean === 0) return { say: [LINES.nothingCounted], assumptions: [] };
  const belief = {
    prior: REPAIR_PRIOR,
    // A knotter that never tied at all would make a single good tie a proof; nobody counted that surely.
    faultyRate: Math.min(misses / bales, 0.999),
    fixedRate: Math.min(CURED_RATE, misses / bales / 2),
  };
  const noChange = chanceRepairChangedNothing({ misses, ties: bales }, { misses: 0, ties: clean });
  const isProved = clean >= cleanTiesNeeded(misses / bales, USUAL_CONFIDENCE);
  return {
    say: [
      isProved ? LINES.fixedYes : LINES.fixedNotYet,
      LINES.chanceFixed,
      ...percent(chanceFixed(belief, clean)),
      LINES.atMost,
      ...percent(upperBoundAfterClean(clean, USUAL_CONFIDENCE)),
      LINES.ofCases,
      LINES.chanceNothing,
      ...percent(noChange),
      LINES.ofCases,
      LINES.grantedPrior,
    ],
    assumptions: [EVERY_TIE_ALIKE, PRIOR_ASSUMED],
  };
}

function answerCleanTies(given: Given): FigureAnswer {
  const { misses, bales } = given.misses('missCount');
  if (misses === 0) return { say: [LINES.noMiss], assumptions: [] };
  const rate = misses / bales;
  const inARow = cleanTiesNeeded(rate, USUAL_CONFIDENCE);
  const plan: SequentialPlan = {
    fixedRate: Math.min(CURED_RATE, rate / 2),
    faultyRate: Math.min(rate, 0.99),
    falseAlarm: WRONG_CALL,
    missedFault: WRONG_CALL,
  };
  const asYouGo = judgeInSequence(plan, []).cleanTiesStillNeeded;
  return {
    say: [
      LINES.needsClean,
      ...given.say(inARow, 'tie'),
      LINES.inARow,
      LINES.needsForgiving,
      ...given.say(tiesNeededForgivingOneMiss(rate, USUAL_CONFIDENCE), 'tie'),
      ...(asYouGo <= LONGEST_RUN ? [LINES.sequential, ...given.say(asYouGo, 'tie')] : []),
      LINES.grantedChance,
    ],
    assumptions: [EVERY_TIE_ALIKE],
  };
}
