import fc from 'fast-check';
import { expect, test } from 'vitest';
import { baleOnOrStop } from '../../../flows/figures/bale-on-or-stop.ts';

const work = fc.record({
  baleMissRate: fc.double({ min: 0, max: 1, noNaN: true }),
  balesLeft: fc.integer({ min: 0, max: 5000 }),
  minutesPerBrokenBale: fc.double({ min: 0, max: 30, noNaN: true }),
  minutesToRepair: fc.double({ min: 0, max: 300, noNaN: true }),
});

test('a safety fault never says bale on', () => {
  fc.assert(
    fc.property(work, (w) => {
      expect(baleOnOrStop({ ...w, safetyFault: true }).decision).toBe(
        'stop: this fault is not one to bale with',
      );
    }),
  );
});

test('otherwise it takes the cheaper way, and more bales left never turn a stop into baling on', () => {
  fc.assert(
    fc.property(work, fc.integer({ min: 0, max: 1000 }), (w, more) => {
      const now = baleOnOrStop({ ...w, safetyFault: false });
      expect(now.decision).toBe(now.rework.value > now.repair.value ? 'stop and mend' : 'bale on');
      const later = baleOnOrStop({ ...w, balesLeft: w.balesLeft + more, safetyFault: false });
      if (now.decision === 'stop and mend') expect(later.decision).toBe('stop and mend');
    }),
  );
});

test('impossible work is refused even for a safety fault', () => {
  const w = {
    baleMissRate: 2,
    balesLeft: 400,
    minutesPerBrokenBale: 3,
    minutesToRepair: 15,
    safetyFault: true,
  };
  expect(() => baleOnOrStop(w)).toThrow('share of bales missed');
  expect(() => baleOnOrStop({ ...w, baleMissRate: 0.1, minutesToRepair: -1 })).toThrow(
    'The time for the repair of minus 1 minutes is outside 0 to 10000 minutes.',
  );
});
