import { describe, expect, test } from 'vitest';
import {
  baleDensity,
  baleVolume,
  baleWeight,
  densityChange,
  dryMatter,
} from '../../../flows/figures/bale.ts';
import { baleOnOrStop } from '../../../flows/figures/bale-on-or-stop.ts';
import { balesPerPackage } from '../../../flows/figures/bales-per-package.ts';
import { chanceNotTheBallChange } from '../../../flows/figures/ball-change-test.ts';
import { chanceRepairChangedNothing } from '../../../flows/figures/before-after.ts';
import { exactInterval } from '../../../flows/figures/binomial-interval.ts';
import { camOutlook } from '../../../flows/figures/cam-wear.ts';
import { chainWear } from '../../../flows/figures/chain-wear.ts';
import {
  chanceOfCleanRun,
  cleanTiesNeeded,
  tiesNeededForgivingOneMiss,
  upperBoundAfterClean,
} from '../../../flows/figures/clean-ties.ts';
import { discDrive, discStep } from '../../../flows/figures/disc-step.ts';
import { endPressure, endPushHeld, endPushHeldUnevenly, knotRatio } from '../../../flows/figures/end-push.ts';
import { chanceFixed } from '../../../flows/figures/fixed-probability.ts';
import { baleMissRate, knotMissRate, missRateInterval } from '../../../flows/figures/miss-rate.ts';
import {
  crankFromPlunger,
  plungerErrorFromSlip,
  plungerFromFullCompression,
} from '../../../flows/figures/plunger.ts';
import { ImpossibleFigure } from '../../../flows/figures/quantity.ts';
import {
  runnageFromLength,
  texFromRunnage,
  twineLengthFromMass,
  twineMassOnBales,
} from '../../../flows/figures/runnage.ts';
import { daysOfBaling, seasonDate } from '../../../flows/figures/season-date.ts';
import { judgeInSequence } from '../../../flows/figures/sequential-test.ts';
import { sideTest } from '../../../flows/figures/side-test.ts';
import { nextBallChange } from '../../../flows/figures/splice-window.ts';
import { pitchFromThreadsPerInch, springChange } from '../../../flows/figures/spring-bolt.ts';
import { crankDegreesIn, strokeTime } from '../../../flows/figures/stroke-time.ts';
import {
  balesPerHour,
  flake,
  lengthScatter,
  secondsPerBale,
  throughput,
} from '../../../flows/figures/strokes.ts';
import { studentT } from '../../../flows/figures/student-t.ts';
import { compareWithTarget } from '../../../flows/figures/target-rate.ts';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../../../flows/figures/teeth.ts';
import {
  checkLabelByCount,
  leastHonestLength,
  leastHonestStrength,
} from '../../../flows/figures/twine-label.ts';
import { twinePerBale, twinePerBaleCounted, twinePerString } from '../../../flows/figures/twine-per-bale.ts';
import { forecastWear } from '../../../flows/figures/wear.ts';

type Args = readonly unknown[];

/** A public figure with arguments that are possible; the test spoils them one number at a time. */
interface Sample {
  readonly name: string;
  readonly args: Args;
  readonly call: (args: Args) => unknown;
}

function sample<A extends Args>(work: (...args: A) => unknown, ...args: A): Sample {
  return { name: work.name, args, call: (spoiled) => work(...(spoiled as A)) };
}

const SIZE = { lengthIn: 36, heightIn: 14, widthIn: 18 };
const DRIVE = { crankRadiusIn: 15, rodLengthIn: 40 };
const BEFORE = { misses: 6, ties: 60 };

const SAMPLES: readonly Sample[] = [
  sample(baleVolume, SIZE),
  sample(baleWeight, SIZE, 10),
  sample(baleDensity, SIZE, 50),
  sample(dryMatter, 50, 0.15),
  sample(densityChange, 12, 10),
  sample(baleOnOrStop, {
    baleMissRate: 0.02,
    balesLeft: 400,
    minutesPerBrokenBale: 3,
    minutesToRepair: 15,
    safetyFault: false,
  }),
  sample(balesPerPackage, { labelFt: 9000, labelledFor: 'each ball', balls: 2 }, 9, 2),
  sample(chanceNotTheBallChange, 2, 4, 540, 3),
  sample(chanceRepairChangedNothing, BEFORE, { misses: 0, ties: 60 }),
  sample(exactInterval, 6, 60, 0.95),
  sample(camOutlook, 5000),
  sample(chainWear, 0.625, 12, 7.6),
  sample(cleanTiesNeeded, 0.1, 0.95),
  sample(tiesNeededForgivingOneMiss, 0.1, 0.95),
  sample(chanceOfCleanRun, 10, 0.1),
  sample(upperBoundAfterClean, 29, 0.95),
  sample(discStep, 4),
  sample(discDrive, 4, 4),
  sample(endPushHeld, 130, 2),
  sample(endPushHeldUnevenly, 130, 0.7, 2),
  sample(endPressure, 520, 14, 18),
  sample(knotRatio, 130, 230),
  sample(chanceFixed, { prior: 0.7, faultyRate: 0.1, fixedRate: 0.005 }, 30),
  sample(missRateInterval, 6, 60, 0.95),
  sample(baleMissRate, 0.007, 2),
  sample(knotMissRate, 0.014, 2),
  sample(plungerFromFullCompression, DRIVE, 20),
  sample(crankFromPlunger, DRIVE, 2),
  sample(plungerErrorFromSlip, DRIVE, 20, 20),
  sample(twineLengthFromMass, 9, 400),
  sample(runnageFromLength, 3600, 9),
  sample(texFromRunnage, 400),
  sample(twineMassOnBales, 1000, 16.7, 200),
  sample(daysOfBaling, 6000, 400),
  sample(
    seasonDate,
    6000,
    400,
    { month: 6, day: 1 },
    { begins: { month: 6, day: 1 }, ends: { month: 9, day: 30 } },
  ),
  sample(judgeInSequence, { fixedRate: 0.005, faultyRate: 0.1, falseAlarm: 0.05, missedFault: 0.05 }, [true]),
  sample(sideTest, 9, 1),
  sample(nextBallChange, 4500, 9, 400),
  sample(springChange, 0.25, 1.25),
  sample(pitchFromThreadsPerInch, 16),
  sample(strokeTime, 80),
  sample(crankDegreesIn, 0.5, 80),
  sample(flake, 36, 12),
  sample(lengthScatter, 36, 12),
  sample(balesPerHour, 80, 12),
  sample(secondsPerBale, 80, 12),
  sample(throughput, 52.5, 80, 12),
  sample(studentT, 0.95, 2),
  sample(compareWithTarget, 6, 60, 0.95),
  sample(degreesPerTooth, 12),
  sample(gearRatio, [{ driverTeeth: 12, drivenTeeth: 36 }]),
  sample(lastShaftSpeed, 540, 6.75),
  sample(leastHonestLength, 9000),
  sample(leastHonestStrength, 130),
  sample(checkLabelByCount, 9000, 540, 470),
  sample(twinePerString, { lengthIn: 36, heightIn: 14, knotAllowanceIn: 3 }),
  sample(twinePerBale, { lengthIn: 36, heightIn: 14, strings: 2 }),
  sample(twinePerBaleCounted, 9000, 540),
  sample(forecastWear, {
    readings: [
      { bales: 5000, wearMm: 0.1 },
      { bales: 10_000, wearMm: 0.22 },
      { bales: 15_000, wearMm: 0.31 },
    ],
    limitMm: 0.5,
    balesNow: 15_000,
    from: 'run in',
    confidence: 0.6,
  }),
];

/** Every copy of `value` in which one number, however deep, is replaced. */
function spoiled(value: unknown, by: number): unknown[] {
  if (typeof value === 'number') return [by];
  if (Array.isArray(value)) {
    return value.flatMap((item, at) => spoiled(item, by).map((bad) => value.with(at, bad)));
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, item]) =>
      spoiled(item, by).map((bad) => ({ ...value, [key]: bad })),
    );
  }
  return [];
}

describe.each(SAMPLES.map((each) => [each.name, each] as const))('%s', (_, { args, call }) => {
  test('answers what is possible', () => {
    expect(call(args)).toBeDefined();
  });

  test.each([Number.NaN, 1e12, -1e12, Number.POSITIVE_INFINITY])(
    'refuses %d in any place, in plain speech',
    (by) => {
      const bad = spoiled(args, by);
      expect(bad.length).toBeGreaterThan(0);
      for (const each of bad) {
        expect(() => call(each as Args), JSON.stringify(each)).toThrow(ImpossibleFigure);
        expect(() => call(each as Args)).toThrow(/^[A-Z0-9].*\. Say .+ again\.$/);
      }
    },
  );
});
