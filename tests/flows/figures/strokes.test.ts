import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  balesPerHour,
  flake,
  lengthScatter,
  secondsPerBale,
  throughput,
} from '../../../flows/figures/strokes.ts';

const strokesPerBale = fc.integer({ min: 3, max: 60 });
const strokesPerMinute = fc.double({ min: 20, max: 150, noNaN: true });

test('the flakes of a bale add up to the bale', () => {
  fc.assert(
    fc.property(fc.double({ min: 12, max: 60, noNaN: true }), strokesPerBale, (lengthIn, n) => {
      expect(n * flake(lengthIn, n).value).toBeCloseTo(lengthIn, 9);
    }),
  );
});

test('the bales of an hour take an hour', () => {
  fc.assert(
    fc.property(strokesPerMinute, strokesPerBale, (spm, n) => {
      expect(balesPerHour(spm, n).value * secondsPerBale(spm, n).value).toBeCloseTo(3600, 8);
    }),
  );
});

test('length scatter is what even chances within one flake come to', () => {
  const steps = 100_000;
  const width = flake(36, 12).value;
  const middle = width / 2;
  let squares = 0;
  for (let step = 0; step < steps; step++) squares += (((step + 0.5) * width) / steps - middle) ** 2;
  expect(lengthScatter(36, 12).value).toBeCloseTo(Math.sqrt(squares / steps), 6);
});

test('twice the bale is twice the hay', () => {
  expect(throughput(100, 80, 12).value).toBeCloseTo(2 * throughput(50, 80, 12).value, 10);
});

test('impossible speeds are refused', () => {
  expect(() => balesPerHour(540, 12)).toThrow('The strokes a minute of 540 is outside 20 to 150.');
  expect(() => flake(36, 1)).toThrow('number of strokes a bale');
  expect(() => throughput(1, 80, 12)).toThrow('bale weight');
});
