import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sharesAfter } from '../../flows/diagnosis/dirichlet.ts';

/**
 * P. S. Laplace, "Essai philosophique sur les probabilités" (1814), the rule of succession: after n successes in n
 * trials, and nothing known before, the next succeeds with probability (n + 1) / (n + 2). His own example is the
 * sunrise: 1 826 213 days running make it 1 826 214 to 1 that the sun will rise again.
 */
describe('shares after counting', () => {
  test('give the published odds of the sunrise', () => {
    const [rises, doesNot] = sharesAfter([0.5, 0.5], 2, [1_826_213, 0]);
    expect((rises ?? 0) / (doesNot ?? 0)).toBeCloseTo(1_826_214, 3);
  });

  test('follow the rule of succession for any count', () => {
    fc.assert(
      fc.property(fc.nat({ max: 10_000 }), fc.nat({ max: 10_000 }), (successes, failures) => {
        const [next] = sharesAfter([0.5, 0.5], 2, [successes, failures]);
        expect(next).toBeCloseTo((successes + 1) / (successes + failures + 2), 12);
      }),
    );
  });

  test('leave the seed for the observed shares as cases come in', () => {
    const [share] = sharesAfter([0.1, 0.9], 20, [6000, 4000]);
    expect(share).toBeCloseTo(0.6, 2);
  });
});
