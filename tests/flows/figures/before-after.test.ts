import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceRepairChangedNothing } from '../../../flows/figures/before-after.ts';

const count = fc
  .integer({ min: 1, max: 400 })
  .chain((ties) => fc.record({ ties: fc.constant(ties), misses: fc.integer({ min: 0, max: ties }) }));

test('is a chance, and certain when every miss could as well have come after', () => {
  fc.assert(
    fc.property(count, count, (before, after) => {
      const chance = chanceRepairChangedNothing(before, after);
      expect(chance).toBeGreaterThan(0);
      expect(chance).toBeLessThanOrEqual(1);
      if (before.misses === 0) expect(chance).toBeCloseTo(1, 9);
    }),
  );
});

test('a longer clean run is never weaker proof', () => {
  fc.assert(
    fc.property(count, fc.integer({ min: 1, max: 400 }), (before, ties) => {
      const chance = (n: number) => chanceRepairChangedNothing(before, { misses: 0, ties: n });
      expect(chance(ties + 1)).toBeLessThanOrEqual(chance(ties) * (1 + 1e-9));
    }),
  );
});

test('impossible counts are refused, and say which spell', () => {
  const good = { misses: 0, ties: 30 };
  expect(() => chanceRepairChangedNothing({ misses: 7, ties: 6 }, good)).toThrow(
    'The number of misses before the repair of 7 is outside 0 to 6.',
  );
  expect(() => chanceRepairChangedNothing(good, { misses: 0, ties: 0 })).toThrow(
    'number of ties after the repair',
  );
});
