import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeInSequence, type SequentialPlan } from '../../../flows/figures/sequential-test.ts';

const plan: fc.Arbitrary<SequentialPlan> = fc.record({
  fixedRate: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
  faultyRate: fc.double({ min: 0.04, max: 0.5, noNaN: true }),
  falseAlarm: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
  missedFault: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
});
const ties = fc.array(fc.boolean(), { maxLength: 60 });
const cleanRun = (length: number) => Array.from({ length }, () => true);

test('exactly the clean ties it asks for end it as fixed, and one fewer do not', () => {
  fc.assert(
    fc.property(plan, ties, (p, log) => {
      const now = judgeInSequence(p, log);
      fc.pre(now.verdict === 'keep tying');
      const { cleanTiesStillNeeded: n } = now;
      expect(n).toBeGreaterThan(0);
      expect(judgeInSequence(p, [...log, ...cleanRun(n - 1)]).verdict).toBe('keep tying');
      // One more than asked is allowed for rounding where the sum meets the bound to the last digit.
      expect(judgeInSequence(p, [...log, ...cleanRun(n + 1)]).verdict).toBe('fixed');
    }),
  );
});

test('a verdict stands whatever is tied afterwards', () => {
  fc.assert(
    fc.property(plan, ties, ties, (p, log, later) => {
      const now = judgeInSequence(p, log);
      fc.pre(now.verdict !== 'keep tying');
      expect(judgeInSequence(p, [...log, ...later])).toEqual(now);
    }),
  );
});

test('enough misses always say still faulty', () => {
  fc.assert(
    fc.property(plan, (p) => {
      expect(
        judgeInSequence(
          p,
          Array.from({ length: 60 }, () => false),
        ).verdict,
      ).toBe('still faulty');
    }),
  );
});

test('a plan that cannot tell its two rates apart is refused', () => {
  const bad = { fixedRate: 0.1, faultyRate: 0.1, falseAlarm: 0.05, missedFault: 0.05 };
  expect(() => judgeInSequence(bad, [])).toThrow(
    'The faulty knotter must miss more often than the good one.',
  );
  expect(() => judgeInSequence({ ...bad, falseAlarm: 0.6 }, [])).toThrow('chance of a wrong call');
});
