import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { chainWear } from '../figures/chain-wear.ts';
import { discDrive, discStep } from '../figures/disc-step.ts';
import { crankFromPlunger, plungerErrorFromSlip, plungerFromFullCompression } from '../figures/plunger.ts';
import { crankDegreesIn, strokeTime } from '../figures/stroke-time.ts';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../figures/teeth.ts';
import { type FigureQuestion, percent } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';

/** Needles up and down; common practice, no source. */
const NEEDLE_SECONDS = 0.5;

/** Timing: crank and plunger, teeth, ratios and the chain between them. */
export const TIMING_FIGURES = {
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
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;
