import { describe, expect, test } from 'vitest';
import { chainWear } from '../../flows/figures/chain-wear.ts';
import { discDrive, discStep } from '../../flows/figures/disc-step.ts';
import {
  crankFromPlunger,
  plungerErrorFromSlip,
  plungerFromFullCompression,
} from '../../flows/figures/plunger.ts';
import { pitchFromThreadsPerInch, springChange } from '../../flows/figures/spring-bolt.ts';
import { crankDegreesIn, strokeTime } from '../../flows/figures/stroke-time.ts';
import { degreesPerTooth, gearRatio, lastShaftSpeed } from '../../flows/figures/teeth.ts';
import { convert, inUnit } from '../../flows/figures/units.ts';

const DRIVE = { crankRadiusIn: 15, rodLengthIn: 40 };

describe('plunger and crank', () => {
  // Source: the slider-crank series of engineering handbooks, r/l = k: x = r[(1 - cos a) + sum of the binomial series of
  // (1 - sqrt(1 - k^2 sin^2 a)) / k]; its first terms are r[(1 - cos a) + k/2 sin^2 a + k^3/8 sin^4 a].
  test('agrees with the handbook series', () => {
    for (let deg = 0; deg <= 360; deg += 7) {
      const a = (deg * Math.PI) / 180;
      const k = DRIVE.crankRadiusIn / DRIVE.rodLengthIn;
      const s = (k * Math.sin(a)) ** 2;
      let term = s / 2;
      let sum = 0;
      for (let n = 1; n <= 60; n++) {
        sum += term;
        term *= (s * (2 * n - 1)) / (2 * n + 2);
      }
      const series = DRIVE.crankRadiusIn * (1 - Math.cos(a) + sum / k);
      expect(plungerFromFullCompression(DRIVE, deg).value).toBeCloseTo(series, 12);
    }
  });

  // Source: Pythagoras, with nothing of the formula: the rod's two ends are always one rod length apart.
  test('the rod keeps its length', () => {
    const { crankRadiusIn: r, rodLengthIn: l } = DRIVE;
    for (let deg = 0; deg <= 180; deg += 5) {
      const a = (deg * Math.PI) / 180;
      const plungerPin = r + l - plungerFromFullCompression(DRIVE, deg).value;
      expect(Math.hypot(plungerPin - r * Math.cos(a), r * Math.sin(a))).toBeCloseTo(l, 12);
    }
  });

  // Source: recomputed from the slider-crank formula, 15 in crank and 40 in rod.
  test.each([
    [5, '0.08'],
    [10, '0.31'],
    [15, '0.70'],
    [20, '1.23'],
    [25, '1.91'],
    [30, '2.72'],
    [45, '5.83'],
    [90, '17.92'],
    [180, '30.00'],
  ])('%i degrees stand %s in from full compression', (deg, inches) => {
    expect(plungerFromFullCompression(DRIVE, deg).value.toFixed(2)).toBe(inches);
  });

  test.each([
    [10, '7.9'],
    [20, '31.4'],
    [30, '69.1'],
  ])('%i degrees are %s mm', (deg, millimetres) => {
    expect(inUnit('length', plungerFromFullCompression(DRIVE, deg), 'mm').value.toFixed(1)).toBe(millimetres);
  });

  // Source: recomputed by inverting the formula.
  test.each([
    [1, '17.97'],
    [2, '25.6'],
    [3, '31.6'],
    [4, '36.7'],
  ])('%i in is %s degrees', (inches, degrees) => {
    const digits = degrees.split('.')[1]?.length ?? 0;
    expect(crankFromPlunger(DRIVE, inches).value.toFixed(digits)).toBe(degrees);
  });

  // Source: recomputed.
  test('a slip of 20 degrees at 20 degrees is 3.45 in of plunger', () => {
    expect(plungerErrorFromSlip(DRIVE, 20, 20).value.toFixed(2)).toBe('3.45');
  });
});

// Source: recomputed from 60 over strokes a minute and 6 degrees a second for each.
test('stroke time and needle time', () => {
  expect(strokeTime(80).value).toBe(0.75);
  expect(crankDegreesIn(1, 80).value).toBe(480);
  expect(crankDegreesIn(0.5, 80).value).toBe(240);
  expect(crankDegreesIn(0.5, 100).value).toBe(300);
});

describe('teeth and ratios', () => {
  // Source: recomputed from 360 over teeth.
  test.each([
    [12, 30],
    [18, 20],
    [24, 15],
    [36, 10],
  ])('one tooth of %i is %i degrees', (teeth, degrees) => {
    expect(degreesPerTooth(teeth).value).toBe(degrees);
  });

  // Source: 540 turns a minute is the standard power take-off speed (ISO 500-1); 6.75 flywheel turns a stroke is an
  // example, recomputed.
  test('540 turns through 6.75 are 80 strokes, and 12 teeth on 36 a third of that', () => {
    expect(lastShaftSpeed(540, 6.75).value).toBe(80);
    expect(lastShaftSpeed(80, gearRatio([{ driverTeeth: 12, drivenTeeth: 36 }])).value.toFixed(1)).toBe(
      '26.7',
    );
  });

  // Source: common practice, no source: four notches, one a tie.
  test('a painted notch is back after exactly four trips', () => {
    expect(discStep(4).value).toBe(90);
    expect([3, 4, 5].map((trips) => discDrive(4, trips))).toEqual(['slips', 'holds', 'slips']);
  });

  // Source: common practice, no source: twelve pitches, replace at two to three per cent. Pitch of 5/8 in is chain
  // number 50 of ASME B29.1.
  test('twelve pitches of five-eighths chain', () => {
    expect(chainWear(0.625, 12, 7.5).elongation.value).toBe(0);
    expect(chainWear(0.625, 12, 7.5 * 1.025).verdict).toBe('replace soon');
  });
});

// Source: recomputed from turns times pitch; 16 threads an inch is 1.5875 mm.
test('a quarter turn of a spring bolt', () => {
  expect(springChange(0.25, 1.25).value.toFixed(2)).toBe('0.31');
  const inchThread = springChange(0.25, pitchFromThreadsPerInch(16).value);
  expect(inchThread.value.toFixed(2)).toBe('0.40');
  expect(inUnit('length', inchThread, 'in').value).toBeCloseTo(0.015625, 12);
  expect(springChange(convert('angle', 1.5, 'flat', 'turn'), 1.25)).toEqual(springChange(0.25, 1.25));
});
