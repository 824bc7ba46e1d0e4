import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceNotTheBallChange } from '../../../flows/figures/ball-change-test.ts';

test('more misses in the window accuse it more, a wider window less', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      fc.nat(),
      fc.integer({ min: 1, max: 200 }),
      (misses, seed, window) => {
        const inside = seed % misses;
        const chance = (k: number, w: number) => chanceNotTheBallChange(k, misses, 540, w);
        expect(chance(inside + 1, window)).toBeLessThan(chance(inside, window));
        expect(chance(inside + 1, window + 1)).toBeGreaterThan(chance(inside + 1, window));
      },
    ),
  );
});

test('none inside, or a window as long as the ball, accuse nothing', () => {
  expect(chanceNotTheBallChange(0, 5, 540, 3)).toBe(1);
  expect(chanceNotTheBallChange(5, 5, 540, 540)).toBe(1);
});

test('impossible counts are refused', () => {
  expect(() => chanceNotTheBallChange(5, 4, 540, 3)).toThrow('The number of misses after ball changes of 5');
  expect(() => chanceNotTheBallChange(1, 4, 2, 3)).toThrow('number of bales in the window');
  expect(() => chanceNotTheBallChange(1, 4, 1, 1)).toThrow('number of bales a ball');
});
