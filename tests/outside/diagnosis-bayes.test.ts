import { describe, expect, test } from 'vitest';
import { updated } from '../../flows/diagnosis/bayes.ts';

/**
 * D. M. Eddy, "Probabilistic reasoning in clinical medicine: problems and opportunities", in D. Kahneman,
 * P. Slovic and A. Tversky (eds), Judgment under Uncertainty (1982): one woman in a hundred has the disease,
 * the X-ray is positive for 79.2 % of those who have it and 9.6 % of those who do not; after a positive X-ray
 * the disease has a probability of about 7.7 %. Most of the physicians asked said about 75 %.
 */
describe("Bayes' rule", () => {
  test('gives the published answer to the X-ray problem', () => {
    const [disease, healthy] = updated([0.01, 0.99], [0.792, 0.096]);
    expect(disease).toBeCloseTo(0.077, 3);
    expect(healthy).toBeCloseTo(0.923, 3);
  });

  test('gives 7.8 % for the rounded figures the problem is usually told with', () => {
    expect(updated([0.01, 0.99], [0.8, 0.096])[0]).toBeCloseTo(0.078, 3);
  });

  test('leaves a belief alone when the answer is as likely under every explanation', () => {
    expect(updated([0.2, 0.3, 0.5], [0.4, 0.4, 0.4])).toEqual(
      [0.2, 0.3, 0.5].map((p) => expect.closeTo(p, 12)),
    );
  });
});
