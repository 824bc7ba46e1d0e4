import type { FigureMeaning } from '../../grammar/lexicon.ts';
import type { MissCount } from '../../grammar/measurements.ts';
import { LARGEST_SAID, type Say, type SpokenUnit, sayMeasure } from '../../grammar/say.ts';
import { baleDensity, densityChange, dryMatter } from '../figures/bale.ts';
import { baleOnOrStop } from '../figures/bale-on-or-stop.ts';
import { balesPerPackage, type LabelledFor } from '../figures/bales-per-package.ts';
import { chanceRepairChangedNothing } from '../figures/before-after.ts';
import { camOutlook } from '../figures/cam-wear.ts';
import { chainWear } from '../figures/chain-wear.ts';
import { cleanTiesNeeded, tiesNeededForgivingOneMiss, upperBoundAfterClean } from '../figures/clean-ties.ts';
import { USUAL_CONFIDENCE } from '../figures/confidence.ts';
import { discDrive, discStep } from '../figures/disc-step.ts';
import { endPressure, endPushHeld, knotRatio } from '../figures/end-push.ts';
import type { Assumption } from '../figures/figure.ts';
import { chanceFixed } from '../figures/fixed-probability.ts';
import { plungerErrorFromSlip, plungerFromFullCompression } from '../figures/plunger.ts';
import { twineMassOnBales } from '../figures/runnage.ts';
import { dateBalesRunOut } from '../figures/season-date.ts';
import { judgeInSequence, type SequentialPlan } from '../figures/sequential-test.ts';
import { sideTest } from '../figures/side-test.ts';
import { nextBallChange } from '../figures/splice-window.ts';
import { springChange } from '../figures/spring-bolt.ts';
import { balesPerHour, flake, lengthScatter, secondsPerBale, throughput } from '../figures/strokes.ts';
import { compareWithTarget, type TargetVerdict } from '../figures/target-rate.ts';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../figures/teeth.ts';
import { checkLabelByCount } from '../figures/twine-label.ts';
import { twinePerBale, twinePerString } from '../figures/twine-per-bale.ts';
import { convert } from '../figures/units.ts';
import { forecastWear } from '../figures/wear.ts';
import type { InputId } from './inputs.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import type { FigureAnswer, FigureValues } from './values.ts';

/** A figure that can be asked for: what it has to be told, and what it then says. */
export interface FigureQuestion {
  readonly inputs: readonly InputId[];
  /**
   * Works the figure out.
   * @param given a possible value for each of `inputs`
   * @throws ImpossibleFigure where the values, each possible by itself, do not fit together
   */
  readonly answer: (given: Given) => FigureAnswer;
}

/** Typed access to the values of a figure. */
export class Given {
  readonly #values: FigureValues;

  constructor(values: FigureValues) {
    this.#values = values;
  }

  number(id: InputId): number {
    const value = this.#values[id];
    if (typeof value !== 'number') throw new TypeError(`The figure was not given a number for ${id}.`);
    return value;
  }

  misses(id: 'missCount'): MissCount {
    const value = this.#values[id];
    if (typeof value !== 'object') throw new TypeError(`The figure was not given a count for ${id}.`);
    return value;
  }

  chose(id: InputId): string {
    const value = this.#values[id];
    if (typeof value !== 'string') throw new TypeError(`The figure was not given a choice for ${id}.`);
    return value;
  }
}

/** Chance that a repair cures, and the miss rate of a knotter that is cured. Expert estimates. */
const REPAIR_PRIOR = 0.7;
const CURED_RATE = 0.005;
/** Below this a lean or a clean run is taken as no luck; the customary line. */
const LUCK = 0.05;
const WRONG_CALL = 0.05;
/** The number of days does not depend on where they begin. */
const ANY_DAY = '2001-01-01';
/** A sequential plan longer than this is no use in a field. */
const LONGEST_RUN = 5000;

export const FIGURES: Readonly<Record<FigureMeaning, FigureQuestion>> = {
  'figure.twineForBales': {
    inputs: ['baleLength', 'baleHeight', 'balesToMake'],
    answer: (given) => {
      const perBale = twinePerBale(baleOf(given));
      return {
        say: [
          LINES.oneBaleTakes,
          ...amount(perBale.value, 'foot'),
          LINES.allTake,
          ...amount(perBale.value * given.number('balesToMake'), 'foot'),
          LINES.grantedLies,
        ],
        assumptions: perBale.assumptions,
      };
    },
  },
  'figure.balesFromTwine': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight'],
    answer: (given) => {
      const bales = packageBales(given);
      return {
        say: [LINES.packageTies, ...amount(bales.value, 'bale'), LINES.grantedLies, LINES.grantedBallsUsed],
        assumptions: bales.assumptions,
      };
    },
  },
  'figure.balesLeftOnBall': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight', 'balesSinceChange'],
    answer: (given) => {
      const string = twinePerString(baleOf(given));
      const { balesLeft, stage } = nextBallChange(
        ballFeet(given),
        string.value,
        given.number('balesSinceChange'),
      );
      const stageLine = {
        'splice window': [LINES.spliceWindow],
        steady: [],
        'change soon': [LINES.changeSoon],
        'outran its length': [LINES.outran],
      }[stage];
      return {
        say: [LINES.ballLeft, ...amount(balesLeft, 'bale'), ...stageLine, LINES.grantedLies],
        assumptions: string.assumptions,
      };
    },
  },
  'figure.twineWeight': {
    inputs: ['runnage', 'baleLength', 'baleHeight', 'balesToMake'],
    answer: (given) => {
      const perBale = twinePerBale(baleOf(given));
      const mass = twineMassOnBales(given.number('balesToMake'), perBale.value, given.number('runnage'));
      return {
        say: [
          LINES.twineWeighs,
          ...amount(mass.value, 'kilogram'),
          LINES.about,
          ...amount(convert('mass', mass.value, 'kg', 'lb'), 'pound'),
          LINES.grantedLies,
        ],
        assumptions: [...perBale.assumptions, ...mass.assumptions],
      };
    },
  },
  'figure.twineLabel': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight', 'balesCounted'],
    answer: (given) => {
      const expected = packageBales(given);
      const check = checkLabelByCount(
        ballFeet(given) * given.number('balls'),
        expected.value,
        given.number('balesCounted'),
      );
      return {
        say: [
          check.verdict === 'label borne out' ? LINES.labelHolds : LINES.labelShort,
          LINES.eachBaleTook,
          ...amount(check.twinePerBale.value, 'foot'),
          LINES.grantedBallsUsed,
        ],
        assumptions: [...expected.assumptions, ...check.twinePerBale.assumptions],
      };
    },
  },
  'figure.baleDensity': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleWeight'],
    answer: (given) => {
      const density = baleDensity(
        { ...baleOf(given), widthIn: given.number('baleWidth') },
        given.number('baleWeight'),
      );
      return {
        say: [LINES.density, ...amount(density.value, 'poundPerCubicFoot'), LINES.grantedSquare],
        assumptions: density.assumptions,
      };
    },
  },
  'figure.knotLoad': {
    inputs: ['knotStrength', 'baleHeight', 'baleWidth'],
    answer: (given) => {
      const push = endPushHeld(given.number('knotStrength'));
      const pressure = endPressure(push.value, given.number('baleHeight'), given.number('baleWidth'));
      return {
        say: [
          LINES.knotsHold,
          ...amount(push.value, 'poundForce'),
          LINES.onTheEnd,
          ...amount(pressure.value, 'poundPerSquareInch'),
          LINES.grantedAlike,
        ],
        assumptions: push.assumptions,
      };
    },
  },
  'figure.flake': {
    inputs: ['baleLength', 'strokesPerBale'],
    answer: (given) => {
      const [long, strokes] = [given.number('baleLength'), given.number('strokesPerBale')];
      const each = flake(long, strokes);
      const scatter = lengthScatter(long, strokes);
      return {
        say: [
          LINES.flakeIs,
          ...amount(each.value, 'inch'),
          LINES.scatterIs,
          ...amount(scatter.value, 'inch'),
          LINES.grantedStrokes,
        ],
        assumptions: [...each.assumptions, ...scatter.assumptions],
      };
    },
  },
  'figure.balesPerHour': {
    inputs: ['strokesPerMinute', 'strokesPerBale'],
    answer: (given) => {
      const [pace, strokes] = [given.number('strokesPerMinute'), given.number('strokesPerBale')];
      const rate = balesPerHour(pace, strokes);
      return {
        say: [
          LINES.perHour,
          ...amount(rate.value, 'bale'),
          LINES.oneEvery,
          ...amount(secondsPerBale(pace, strokes).value, 'second'),
          LINES.grantedNoStops,
        ],
        assumptions: rate.assumptions,
      };
    },
  },
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
  'figure.fixed': {
    inputs: ['missCount', 'cleanTies'],
    answer: (given) => answerFixed(given.misses('missCount'), given.number('cleanTies')),
  },
  'figure.cleanTies': {
    inputs: ['missCount'],
    answer: (given) => answerCleanTies(given.misses('missCount')),
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
          ...amount(rework.value, 'minute'),
          LINES.repairCosts,
          ...amount(repair.value, 'minute'),
          LINES.grantedNoWorse,
        ],
        assumptions: [...rework.assumptions, ...repair.assumptions],
      };
    },
  },
  'figure.plunger': {
    inputs: ['crankRadius', 'rodLength', 'crankAngle'],
    answer: (given) => {
      const distance = plungerFromFullCompression(
        { crankRadiusIn: given.number('crankRadius'), rodLengthIn: given.number('rodLength') },
        given.number('crankAngle'),
      );
      return {
        say: [LINES.plungerAt, ...amount(distance.value, 'inch'), LINES.grantedInLine],
        assumptions: distance.assumptions,
      };
    },
  },
  'figure.tooth': {
    inputs: ['teeth'],
    answer: (given) => {
      const degrees = degreesPerTooth(given.number('teeth'));
      return {
        say: [LINES.oneToothIs, ...amount(degrees.value, 'degree')],
        assumptions: degrees.assumptions,
      };
    },
  },
  'figure.gearRatio': {
    inputs: ['driverTeeth', 'drivenTeeth'],
    answer: (given) => {
      const ratio = gearRatio([
        { driverTeeth: given.number('driverTeeth'), drivenTeeth: given.number('drivenTeeth') },
      ]);
      return {
        say: [LINES.ratioIs, ...amount(10 * ratio, 'turn')],
        assumptions: [{ says: 'Nothing slips.', standing: 'derived' }],
      };
    },
  },
  'figure.chain': {
    inputs: ['chainPitch', 'chainPitches', 'chainLength'],
    answer: (given) => {
      const { elongation, verdict } = chainWear(
        given.number('chainPitch'),
        given.number('chainPitches'),
        given.number('chainLength'),
      );
      const verdictLine = {
        good: LINES.chainGood,
        'replace soon': LINES.chainSoon,
        'replace now': LINES.chainNow,
      }[verdict];
      return {
        say: [
          ...(elongation.value > 0
            ? [LINES.chainLonger, ...percent(elongation.value / 100)]
            : [LINES.chainShorter]),
          verdictLine,
          LINES.grantedCommon,
          LINES.checkManual,
        ],
        assumptions: elongation.assumptions,
      };
    },
  },
  'figure.disc': {
    inputs: ['notches', 'tripsToReturn'],
    answer: (given) => {
      const notches = given.number('notches');
      return {
        say: [
          discDrive(notches, given.number('tripsToReturn')) === 'holds' ? LINES.discHolds : LINES.discSlips,
          LINES.grantedCommon,
        ],
        assumptions: discStep(notches).assumptions,
      };
    },
  },
  'figure.springBolt': {
    inputs: ['boltTurns', 'boltPitch'],
    answer: (given) => {
      const change = springChange(given.number('boltTurns'), given.number('boltPitch'));
      return {
        say: [LINES.springBy, ...amount(change.value, 'millimetre'), LINES.checkManual],
        assumptions: change.assumptions,
      };
    },
  },
  'figure.season': {
    inputs: ['balesToMake', 'balesPerDay'],
    answer: (given) => {
      // Only the days are said: a tablet's clock may be wrong, and a date is not asked for by voice.
      const { date, fullDays, assumptions } = dateBalesRunOut(
        given.number('balesToMake'),
        given.number('balesPerDay'),
        ANY_DAY,
      );
      return {
        say:
          date === null
            ? [LINES.tooFar]
            : [LINES.lasts, ...sayMeasure(fullDays, 'day'), LINES.grantedNoStops],
        assumptions,
      };
    },
  },
  'figure.hayRate': {
    inputs: ['baleWeight', 'strokesPerMinute', 'strokesPerBale'],
    answer: (given) => {
      const rate = throughput(
        given.number('baleWeight'),
        given.number('strokesPerMinute'),
        given.number('strokesPerBale'),
      );
      return {
        say: [
          LINES.hayInHour,
          ...amount(convert('mass', rate.value, 'tonne', 'lb'), 'pound'),
          LINES.about,
          ...amount(convert('mass', rate.value, 'tonne', 'kg'), 'kilogram'),
          LINES.grantedNoStops,
        ],
        assumptions: rate.assumptions,
      };
    },
  },
  'figure.dryMatter': {
    inputs: ['baleWeight', 'moisture'],
    answer: (given) => {
      const dry = dryMatter(given.number('baleWeight'), given.number('moisture') / 100);
      return { say: [LINES.dryIs, ...amount(dry.value, 'pound')], assumptions: dry.assumptions };
    },
  },
  'figure.denser': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleWeight', 'goodWeight'],
    answer: (given) => {
      const size = { ...baleOf(given), widthIn: given.number('baleWidth') };
      const change = densityChange(
        baleDensity(size, given.number('baleWeight')).value,
        baleDensity(size, given.number('goodWeight')).value,
      );
      return {
        say: [change.suspect ? LINES.denserNow : LINES.denserNot, LINES.grantedSquare],
        assumptions: change.ratio.assumptions,
      };
    },
  },
  'figure.knotRatio': {
    inputs: ['knotStrength', 'straightStrength'],
    answer: (given) => {
      const ratio = knotRatio(given.number('knotStrength'), given.number('straightStrength'));
      return {
        say: [LINES.knotKeeps, ...percent(ratio.value), LINES.ofStraight],
        assumptions: ratio.assumptions,
      };
    },
  },
  'figure.shaftSpeed': {
    inputs: ['drivingSpeed', 'driverTeeth', 'drivenTeeth'],
    answer: (given) => {
      const ratio = gearRatio([
        { driverTeeth: given.number('driverTeeth'), drivenTeeth: given.number('drivenTeeth') },
      ]);
      const speed = lastShaftSpeed(given.number('drivingSpeed'), ratio);
      return {
        say: [LINES.drivenTurns, ...amount(speed.value, 'turn'), LINES.grantedNoSlip],
        assumptions: speed.assumptions,
      };
    },
  },
  'figure.toothSlip': {
    inputs: ['crankRadius', 'rodLength', 'crankAngle', 'teeth'],
    answer: (given) => {
      const error = plungerErrorFromSlip(
        { crankRadiusIn: given.number('crankRadius'), rodLengthIn: given.number('rodLength') },
        given.number('crankAngle'),
        degreesPerTooth(given.number('teeth')).value,
      );
      return {
        say: [LINES.oneToothMoves, ...amount(Math.abs(error.value), 'inch'), LINES.grantedInLine],
        assumptions: error.assumptions,
      };
    },
  },
  'figure.wear': {
    inputs: ['wearBefore', 'wearBeforeAt', 'wearNow', 'wearNowAt', 'wearLimit'],
    answer: answerWear,
  },
  'figure.cam': {
    inputs: ['balesOnCounter'],
    answer: (given) => {
      const { meanWear, balesToMaintenance } = camOutlook(given.number('balesOnCounter'));
      return {
        say: [
          LINES.camWear,
          ...amount(meanWear.value, 'millimetre'),
          ...(balesToMaintenance.value > 0
            ? [LINES.camDue, ...amount(balesToMaintenance.value, 'bale')]
            : [LINES.camOver]),
          LINES.grantedOneTest,
          LINES.checkManual,
        ],
        assumptions: meanWear.assumptions,
      };
    },
  },
};

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

function answerFixed({ misses, bales }: MissCount, clean: number): FigureAnswer {
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

function answerCleanTies({ misses, bales }: MissCount): FigureAnswer {
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
      ...amount(inARow, 'tie'),
      LINES.inARow,
      LINES.needsForgiving,
      ...amount(tiesNeededForgivingOneMiss(rate, USUAL_CONFIDENCE), 'tie'),
      ...(asYouGo <= LONGEST_RUN ? [LINES.sequential, ...amount(asYouGo, 'tie')] : []),
      LINES.grantedChance,
    ],
    assumptions: [EVERY_TIE_ALIKE],
  };
}

function answerWear(given: Given): FigureAnswer {
  const forecast = forecastWear({
    readings: [
      { bales: given.number('wearBeforeAt'), wearMm: given.number('wearBefore') },
      { bales: given.number('wearNowAt'), wearMm: given.number('wearNow') },
    ],
    limitMm: given.number('wearLimit'),
    balesNow: given.number('wearNowAt'),
    from: 'new at zero',
    confidence: USUAL_CONFIDENCE,
  });
  if (forecast.kind === 'no wear trend') {
    return {
      say: [LINES.wearNoTrend],
      assumptions: [{ says: forecast.says, standing: 'derived' }],
    };
  }
  return {
    say: [
      LINES.wearLimitAt,
      ...amount(forecast.limitAt.value, 'bale'),
      LINES.wearEarliest,
      ...amount(forecast.earliestLimitAt.value, 'bale'),
      LINES.wearLeft,
      ...amount(forecast.balesLeft.value, 'bale'),
      LINES.grantedSteady,
    ],
    assumptions: forecast.balesLeft.assumptions,
  };
}

function baleOf(given: Given): { readonly lengthIn: number; readonly heightIn: number } {
  return { lengthIn: given.number('baleLength'), heightIn: given.number('baleHeight') };
}

const LABELLED_FOR: Readonly<Record<string, LabelledFor>> = {
  'label.eachBall': 'each ball',
  'label.wholePackage': 'whole package',
};

function packageBales(given: Given) {
  const counted = balesPerPackage(
    {
      labelFt: given.number('labelLength'),
      labelledFor: LABELLED_FOR[given.chose('labelledFor')] ?? 'not known',
      balls: given.number('balls'),
    },
    twinePerString(baleOf(given)).value,
  );
  if (counted.kind !== 'known') throw new TypeError('What the label is for is asked before.');
  return counted.bales;
}

/** Length of one ball. */
function ballFeet(given: Given): number {
  const label = given.number('labelLength');
  return given.chose('labelledFor') === 'label.eachBall' ? label : label / given.number('balls');
}

/** A worked-out amount to three places or so, as far as it is worth saying. */
function amount(value: number, unit: SpokenUnit): Say {
  if (value > LARGEST_SAID) return [LINES.moreThan, ...sayMeasure(LARGEST_SAID, unit)];
  const isCount = COUNTS.includes(unit);
  const decimals = isCount || value >= 100 ? 0 : value >= 10 ? 1 : 2;
  return sayMeasure(decimals === 0 ? Math.round(value) : value, unit, { decimals });
}

const COUNTS: readonly SpokenUnit[] = ['bale', 'tie'];

/** A chance in per cent, never "zero" for what is possible nor "a hundred" for what is not sure. */
function percent(chance: number): Say {
  const value = 100 * chance;
  if (chance > 0 && value < 0.1) return [LINES.lessThan, ...sayMeasure(0.1, 'percent', { decimals: 1 })];
  if (chance < 1 && value > 99.9) return [LINES.moreThan, ...sayMeasure(99.9, 'percent', { decimals: 1 })];
  return sayMeasure(value, 'percent', { decimals: 1 });
}
