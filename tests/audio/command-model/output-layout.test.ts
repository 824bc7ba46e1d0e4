import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOutOutputs, leastPadding } from '../../../audio/command-model/output-layout.ts';

const area = (sizes: readonly number[], runs: readonly (readonly [number, number])[]) =>
  runs.reduce((sum, [first, end]) => sum + (end - first) * (sizes[end - 1] ?? 0), 0);

describe('the layout of the outputs', () => {
  it('cuts sizes into runs of least area, as trying every cut shows', () => {
    const ascending = fc
      .array(fc.integer({ min: 1, max: 50 }), { minLength: 3, maxLength: 9 })
      .map((sizes) => sizes.sort((a, b) => a - b));
    fc.assert(
      fc.property(ascending, (sizes) => {
        let best = area(sizes, [[0, sizes.length]]);
        for (let a = 1; a < sizes.length; a++) {
          best = Math.min(
            best,
            area(sizes, [
              [0, a],
              [a, sizes.length],
            ]),
          );
          for (let b = a + 1; b < sizes.length; b++) {
            best = Math.min(
              best,
              area(sizes, [
                [0, a],
                [a, b],
                [b, sizes.length],
              ]),
            );
          }
        }
        const runs = leastPadding(sizes, 3);
        expect(runs.flatMap(([first, end]) => sizes.slice(first, end))).toEqual(sizes);
        expect(area(sizes, runs)).toBe(best);
      }),
    );
  });

  it('gives every senone a slot of its own', () => {
    const base = [0, 0, 0, 1, 2, 2];
    const { slotOfSenone, slotCount } = layOutOutputs([5, 0, 3, 1, 4], base, 2);
    expect(new Set(slotOfSenone.values()).size).toBe(5);
    expect(Math.max(...slotOfSenone.values())).toBeLessThan(slotCount);
  });
});
