import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sideTest } from '../../../flows/figures/side-test.ts';

const misses = fc.integer({ min: 0, max: 500 });

test('naming the sides the other way round changes the side and nothing else', () => {
  fc.assert(
    fc.property(misses, misses, (left, right) => {
      const one = sideTest(left, right);
      const other = sideTest(right, left);
      expect(other.chanceIfNamedBefore).toBe(one.chanceIfNamedBefore);
      expect([one.heavierSide, other.heavierSide]).toEqual(
        left === right ? ['even', 'even'] : left > right ? ['left', 'right'] : ['right', 'left'],
      );
    }),
  );
});

test('one more miss on the heavier side is never weaker evidence', () => {
  fc.assert(
    fc.property(misses, misses, (a, b) => {
      const [light, heavy] = a < b ? [a, b] : [b, a];
      expect(sideTest(heavy + 1, light).chanceOnEitherSide).toBeLessThanOrEqual(
        sideTest(heavy, light).chanceOnEitherSide + 1e-12,
      );
    }),
  );
});

test('no misses and equal misses say nothing', () => {
  expect(sideTest(0, 0).chanceOnEitherSide).toBe(1);
  expect(sideTest(4, 4).chanceOnEitherSide).toBe(1);
});

test('impossible counts are refused', () => {
  expect(() => sideTest(-1, 3)).toThrow('number of left misses');
  expect(() => sideTest(1, 3.5)).toThrow('number of right misses');
});
