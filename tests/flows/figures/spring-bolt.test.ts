import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pitchFromThreadsPerInch, springChange } from '../../../flows/figures/spring-bolt.ts';

test('turning back undoes turning', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 50, noNaN: true }),
      fc.double({ min: 0.3, max: 6, noNaN: true }),
      (turns, pitch) => {
        expect(springChange(turns, pitch).value + springChange(-turns, pitch).value).toBe(0);
      },
    ),
  );
});

test('as many turns as threads move one inch', () => {
  fc.assert(
    fc.property(fc.integer({ min: 5, max: 50 }), (threads) => {
      expect(springChange(threads, pitchFromThreadsPerInch(threads).value).value).toBeCloseTo(25.4, 10);
    }),
  );
});

test('impossible threads are refused', () => {
  expect(() => springChange(0.25, 40)).toThrow('thread pitch');
  expect(() => pitchFromThreadsPerInch(0)).toThrow('number of threads an inch');
  expect(() => springChange(90, 1.25)).toThrow('number of turns');
});
