import { type CalendarDay, sayDay } from '../../grammar/calendar.ts';
import type { FigureMeaning } from '../../grammar/lexicon.ts';
import type { MissCount } from '../../grammar/measurements.ts';
import { LARGEST_SAID, type Say, type SpokenUnit, sayMeasure, sayWhole } from '../../grammar/say.ts';
import { baleDensity, baleWeight, densityChange, dryMatter } from '../figures/bale.ts';
import { baleOnOrStop } from '../figures/bale-on-or-stop.ts';
import { balesPerPackage, type LabelledFor } from '../figures/bales-per-package.ts';
import { chanceNotTheBallChange } from '../figures/ball-change-test.ts';
import { chanceRepairChangedNothing } from '../figures/before-after.ts';
import { camOutlook } from '../figures/cam-wear.ts';
import { chainWear } from '../figures/chain-wear.ts';
import { cleanTiesNeeded, tiesNeededForgivingOneMiss, upperBoundAfterClean } from '../figures/clean-ties.ts';
import { USUAL_CONFIDENCE } from '../figures/confidence.ts';
import { discDrive, discStep } from '../figures/disc-step.ts';
import { endPressure, endPushHeld, endPushHeldUnevenly, knotRatio } from '../figures/end-push.ts';
import type { Assumption } from '../figures/figure.ts';
import { chanceFixed } from '../figures/fixed-probability.ts';
import { crankFromPlunger, plungerErrorFromSlip, plungerFromFullCompression } from '../figures/plunger.ts';
import {
  runnageFromLength,
  texFromRunnage,
  twineLengthFromMass,
  twineMassOnBales,
} from '../figures/runnage.ts';
import { daysOfBaling, type SeasonDate, seasonDate } from '../figures/season-date.ts';
import { judgeInSequence, type SequentialPlan } from '../figures/sequential-test.ts';
import { sideTest } from '../figures/side-test.ts';
import { nextBallChange, SPLICE_WINDOW_BALES } from '../figures/splice-window.ts';
import { springChange } from '../figures/spring-bolt.ts';
import { crankDegreesIn, strokeTime } from '../figures/stroke-time.ts';
import { balesPerHour, flake, lengthScatter, secondsPerBale, throughput } from '../figures/strokes.ts';
import { compareWithTarget, type TargetVerdict } from '../figures/target-rate.ts';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../figures/teeth.ts';
import { checkLabelByCount, leastHonestLength } from '../figures/twine-label.ts';
import { twinePerBale, twinePerString } from '../figures/twine-per-bale.ts';
import { convert, inUnit } from '../figures/units.ts';
import { forecastWear, type WearForecast } from '../figures/wear.ts';
import type { InputId } from './inputs.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import { inSystem, type UnitSystem } from './unit-system.ts';
import type { FigureAnswer, FigureValues } from './values.ts';

/** A figure that can be asked for: what it has to be told, and what it then says. */
export interface FigureQuestion {
  readonly inputs: readonly InputId[];
  /** The figure whose values it goes on with, where that was worked out just before. */
  readonly goesOnFrom?: FigureMeaning;
  /**
   * Works the figure out.
   * @param given a possible value for each of `inputs`
   * @throws ImpossibleFigure where the values, each possible by itself, do not fit together
   */
  readonly answer: (given: Given) => FigureAnswer;
}

/** Typed access to the values of a figure, and the units its answer is given in. */
export class Given {
  readonly #values: FigureValues;
  readonly #system: UnitSystem;

  constructor(values: FigureValues, system: UnitSystem) {
    this.#values = values;
    this.#system = system;
  }

  number(id: InputId): number {
    const value = this.#values[id];
    if (typeof value !== 'number') throw new TypeError(`The figure was not given a number for ${id}.`);
    return value;
  }

  misses(id: 'missCount'): MissCount {
    const value = this.#values[id];
    if (typeof value !== 'object' || !('misses' in value)) {
      throw new TypeError(`The figure was not given a count for ${id}.`);
    }
    return value;
  }

  day(id: InputId): CalendarDay {
    const value = this.#values[id];
    if (typeof value !== 'object' || !('month' in value)) {
      throw new TypeError(`The figure was not given a day for ${id}.`);
    }
    return value;
  }

  chose(id: InputId): string {
    const value = this.#values[id];
    if (typeof value !== 'string') throw new TypeError(`The figure was not given a choice for ${id}.`);
    return value;
  }

  /** A worked-out amount in the units that were asked for, to three places or so, as far as it is worth saying. */
  say(value: number, unit: SpokenUnit): Say {
    const said = inSystem(value, unit, this.#system);
    if (said.amount > LARGEST_SAID) return [LINES.moreThan, ...sayMeasure(LARGEST_SAID, said.unit)];
    const isCount = COUNTS.includes(said.unit);
    const decimals = isCount || said.amount >= 100 ? 0 : said.amount >= 10 ? 1 : 2;
    return sayMeasure(decimals === 0 ? Math.round(said.amount) : said.amount, said.unit, { decimals });
  }
}

const COUNTS: readonly SpokenUnit[] = ['bale', 'tie'];

/** Chance that a repair cures, and the miss rate of a knotter that is cured. Expert estimates. */
const REPAIR_PRIOR = 0.7;
const CURED_RATE = 0.005;
/** Below this a lean or a clean run is taken as no luck; the customary line. */
const LUCK = 0.05;
const WRONG_CALL = 0.05;
/** Needles up and down; common practice, no source. */
const NEEDLE_SECONDS = 0.5;
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
          ...given.say(perBale.value, 'foot'),
          LINES.allTake,
          ...given.say(perBale.value * given.number('balesToMake'), 'foot'),
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
        say: [
          LINES.packageTies,
          ...given.say(bales.value, 'bale'),
          LINES.grantedLies,
          LINES.grantedBallsUsed,
        ],
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
        say: [LINES.ballLeft, ...given.say(balesLeft, 'bale'), ...stageLine, LINES.grantedLies],
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
          ...given.say(mass.value, 'kilogram'),
          LINES.about,
          ...given.say(convert('mass', mass.value, 'kg', 'lb'), 'pound'),
          LINES.grantedLies,
        ],
        assumptions: [...perBale.assumptions, ...mass.assumptions],
      };
    },
  },
  'figure.ballLength': {
    inputs: ['runnage', 'twineWeight'],
    answer: (given) => {
      const long = twineLengthFromMass(kilograms(given.number('twineWeight')), given.number('runnage'));
      return {
        say: [
          LINES.ballHolds,
          ...given.say(convert('length', long.value, 'm', 'ft'), 'foot'),
          LINES.grantedTwineOnly,
        ],
        assumptions: long.assumptions,
      };
    },
  },
  'figure.runnage': {
    inputs: ['labelLength', 'twineWeight'],
    answer: (given) => {
      const runnage = runnageFromLength(
        convert('length', given.number('labelLength'), 'ft', 'm'),
        kilograms(given.number('twineWeight')),
      );
      return {
        say: [
          LINES.runnageIs,
          ...given.say(runnage.value, 'metrePerKilogram'),
          LINES.orAs,
          ...given.say(inUnit('runnage', runnage, 'ft/lb').value, 'footPerPound'),
          LINES.texIs,
          ...sayWhole(Math.round(texFromRunnage(runnage.value).value)),
          LINES.grantedTwineOnly,
        ],
        assumptions: [{ says: 'The weight is twine only, without wrapper or core.', standing: 'entered' }],
      };
    },
  },
  'figure.twineLabel': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight', 'balesCounted'],
    answer: (given) => {
      const expected = packageBales(given);
      const labelFeet = ballFeet(given) * given.number('balls');
      const check = checkLabelByCount(labelFeet, expected.value, given.number('balesCounted'));
      return {
        say: [
          check.verdict === 'label borne out' ? LINES.labelHolds : LINES.labelShort,
          LINES.eachBaleTook,
          ...given.say(check.twinePerBale.value, 'foot'),
          LINES.labelMustHold,
          ...given.say(leastHonestLength(labelFeet).value, 'foot'),
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
        say: [LINES.density, ...given.say(density.value, 'poundPerCubicFoot'), LINES.grantedSquare],
        assumptions: density.assumptions,
      };
    },
  },
  'figure.baleWeight': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleDensity'],
    answer: (given) => {
      const weight = baleWeight(
        { ...baleOf(given), widthIn: given.number('baleWidth') },
        given.number('baleDensity'),
      );
      return {
        say: [LINES.baleWeighs, ...given.say(weight.value, 'pound'), LINES.grantedSquare],
        assumptions: weight.assumptions,
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
          ...given.say(push.value, 'poundForce'),
          LINES.onTheEnd,
          ...given.say(pressure.value, 'poundPerSquareInch'),
          LINES.grantedAlike,
        ],
        assumptions: push.assumptions,
      };
    },
  },
  'figure.unevenStrings': {
    inputs: ['knotStrength', 'tighterShare'],
    answer: (given) => {
      const knot = given.number('knotStrength');
      const push = endPushHeldUnevenly(knot, given.number('tighterShare') / 100);
      return {
        say: [
          LINES.unevenHold,
          ...given.say(push.value, 'poundForce'),
          LINES.evenHold,
          ...given.say(endPushHeld(knot).value, 'poundForce'),
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
          ...given.say(each.value, 'inch'),
          LINES.scatterIs,
          ...given.say(scatter.value, 'inch'),
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
          ...given.say(rate.value, 'bale'),
          LINES.oneEvery,
          ...given.say(secondsPerBale(pace, strokes).value, 'second'),
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
  'figure.plunger': {
    inputs: ['crankRadius', 'rodLength', 'crankAngle'],
    answer: (given) => {
      const distance = plungerFromFullCompression(
        { crankRadiusIn: given.number('crankRadius'), rodLengthIn: given.number('rodLength') },
        given.number('crankAngle'),
      );
      return {
        say: [LINES.plungerAt, ...given.say(distance.value, 'inch'), LINES.grantedInLine],
        assumptions: distance.assumptions,
      };
    },
  },
  'figure.crankAngle': {
    inputs: ['crankRadius', 'rodLength', 'plungerDistance'],
    answer: (given) => {
      const angle = crankFromPlunger(
        { crankRadiusIn: given.number('crankRadius'), rodLengthIn: given.number('rodLength') },
        given.number('plungerDistance'),
      );
      return {
        say: [LINES.crankAt, ...given.say(angle.value, 'degree'), LINES.grantedInLine],
        assumptions: angle.assumptions,
      };
    },
  },
  'figure.strokeTime': {
    inputs: ['strokesPerMinute'],
    answer: (given) => {
      const pace = given.number('strokesPerMinute');
      const degrees = crankDegreesIn(NEEDLE_SECONDS, pace);
      return {
        say: [
          LINES.strokeTakes,
          ...given.say(strokeTime(pace).value, 'second'),
          LINES.needleDegrees,
          ...given.say(degrees.value, 'degree'),
          LINES.grantedSpeed,
          LINES.grantedCommon,
        ],
        assumptions: [
          ...degrees.assumptions,
          { says: 'Needles take half a second up and down.', standing: 'common practice, no source' },
        ],
      };
    },
  },
  'figure.tooth': {
    inputs: ['teeth'],
    answer: (given) => {
      const degrees = degreesPerTooth(given.number('teeth'));
      return {
        say: [LINES.oneToothIs, ...given.say(degrees.value, 'degree')],
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
        say: [LINES.ratioIs, ...given.say(10 * ratio, 'turn')],
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
        say: [LINES.springBy, ...given.say(change.value, 'millimetre'), LINES.checkManual],
        assumptions: change.assumptions,
      };
    },
  },
  'figure.season': {
    inputs: ['balesToMake', 'balesPerDay'],
    answer: (given) => ({
      say: [
        LINES.lasts,
        ...sayMeasure(daysOfBaling(given.number('balesToMake'), given.number('balesPerDay')), 'day'),
        LINES.grantedNoStops,
      ],
      assumptions: [{ says: 'Baling every day at the same pace; rain puts it off.', standing: 'derived' }],
    }),
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
          ...given.say(convert('mass', rate.value, 'tonne', 'lb'), 'pound'),
          LINES.about,
          ...given.say(convert('mass', rate.value, 'tonne', 'kg'), 'kilogram'),
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
      return { say: [LINES.dryIs, ...given.say(dry.value, 'pound')], assumptions: dry.assumptions };
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
        say: [LINES.drivenTurns, ...given.say(speed.value, 'turn'), LINES.grantedNoSlip],
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
        say: [LINES.oneToothMoves, ...given.say(Math.abs(error.value), 'inch'), LINES.grantedInLine],
        assumptions: error.assumptions,
      };
    },
  },
  'figure.wear': {
    inputs: ['wearBefore', 'wearBeforeAt', 'wearNow', 'wearNowAt', 'wearLimit'],
    answer: answerWear,
  },
  'figure.wearDate': {
    inputs: [
      'wearBefore',
      'wearBeforeAt',
      'wearNow',
      'wearNowAt',
      'wearLimit',
      'balesPerDay',
      'today',
      'seasonBegins',
      'seasonEnds',
    ],
    goesOnFrom: 'figure.wear',
    answer: answerWearDate,
  },
  'figure.cam': {
    inputs: ['balesOnCounter'],
    answer: (given) => {
      const { meanWear, balesToMaintenance } = camOutlook(given.number('balesOnCounter'));
      return {
        say: [
          LINES.camWear,
          ...given.say(meanWear.value, 'millimetre'),
          ...(balesToMaintenance.value > 0
            ? [LINES.camDue, ...given.say(balesToMaintenance.value, 'bale')]
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

function answerWear(given: Given): FigureAnswer {
  const forecast = wearForecast(given);
  if (forecast.kind === 'no wear trend') return answerNoTrend(forecast);
  return {
    say: [
      LINES.wearLimitAt,
      ...given.say(forecast.limitAt.value, 'bale'),
      LINES.wearEarliest,
      ...given.say(forecast.earliestLimitAt.value, 'bale'),
      LINES.wearLeft,
      ...given.say(forecast.balesLeft.value, 'bale'),
      LINES.grantedSteady,
    ],
    assumptions: forecast.balesLeft.assumptions,
  };
}

/** The wear line once more, with its ends as days: the early one is what to go by. */
function answerWearDate(given: Given): FigureAnswer {
  const forecast = wearForecast(given);
  if (forecast.kind === 'no wear trend') return answerNoTrend(forecast);
  const dateOfCount = (bales: number) =>
    seasonDate(
      Math.max(0, bales - given.number('wearNowAt')),
      given.number('balesPerDay'),
      given.day('today'),
      { begins: given.day('seasonBegins'), ends: given.day('seasonEnds') },
    );
  const earliest = dateOfCount(forecast.earliestLimitAt.value);
  const likely = dateOfCount(forecast.limitAt.value);
  return {
    say: [
      LINES.wearDateEarliest,
      ...sayDate(earliest),
      LINES.wearDateLikely,
      ...sayDate(likely),
      LINES.grantedSteady,
      LINES.grantedEveryDay,
    ],
    assumptions: [...forecast.limitAt.assumptions, ...earliest.assumptions],
  };
}

function sayDate({ date, season }: SeasonDate): Say {
  if (date === null) return [LINES.afterTenSeasons];
  switch (season) {
    case 0:
      return [...sayDay(date), LINES.thisSeason];
    case 1:
      return [...sayDay(date), LINES.nextSeason];
    default:
      return [...sayDay(date), LINES.inSeasons, ...sayMeasure(season, 'season')];
  }
}

function wearForecast(given: Given): WearForecast {
  return forecastWear({
    readings: [
      { bales: given.number('wearBeforeAt'), wearMm: given.number('wearBefore') },
      { bales: given.number('wearNowAt'), wearMm: given.number('wearNow') },
    ],
    limitMm: given.number('wearLimit'),
    balesNow: given.number('wearNowAt'),
    from: 'new at zero',
    confidence: USUAL_CONFIDENCE,
  });
}

function answerNoTrend({ says }: Extract<WearForecast, { kind: 'no wear trend' }>): FigureAnswer {
  return { say: [LINES.wearNoTrend], assumptions: [{ says, standing: 'derived' }] };
}

function kilograms(pounds: number): number {
  return convert('mass', pounds, 'lb', 'kg');
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

/** A chance in per cent, never "zero" for what is possible nor "a hundred" for what is not sure. */
function percent(chance: number): Say {
  const value = 100 * chance;
  if (chance > 0 && value < 0.1) return [LINES.lessThan, ...sayMeasure(0.1, 'percent', { decimals: 1 })];
  if (chance < 1 && value > 99.9) return [LINES.moreThan, ...sayMeasure(99.9, 'percent', { decimals: 1 })];
  return sayMeasure(value, 'percent', { decimals: 1 });
}
