import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestOrder, type Inspection, minutesInOrder } from '../../../flows/diagnosis/inspection-order.ts';

const probability = fc.double({ min: 0.01, max: 1, noNaN: true });

/** Up to six inspections of up to six causes, sure or unsure, under the lockout or not. */
const anySearch = fc.integer({ min: 1, max: 6 }).chain((causes) =>
  fc.record({
    probabilities: fc.array(probability, { minLength: causes, maxLength: causes }),
    inspections: fc
      .array(
        fc.record({
          minutes: fc.double({ min: 0.5, max: 10, noNaN: true }),
          needsLockout: fc.boolean(),
          passes: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
            minLength: causes,
            maxLength: causes,
          }),
        }),
        { minLength: 1, maxLength: 6 },
      )
      .map((list) => list.map((inspection, index): Inspection => ({ id: String(index), ...inspection }))),
    lockoutMinutes: fc.constantFrom(0, 8, 20),
  }),
);

/** One sure inspection a cause, each with its own cost. */
const independentSearch = fc
  .array(fc.record({ probability, minutes: fc.double({ min: 0.5, max: 10, noNaN: true }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((causes) => ({
    probabilities: causes.map((cause) => cause.probability),
    inspections: causes.map(
      ({ minutes }, index): Inspection => ({
        id: String(index),
        minutes,
        needsLockout: false,
        passes: causes.map((_, cause) => (cause === index ? 0 : 1)),
      }),
    ),
  }));

describe('the best order of inspections', () => {
  test('is no dearer than any other order, by trying them all', () => {
    fc.assert(
      fc.property(anySearch, ({ probabilities, inspections, lockoutMinutes }) => {
        const { expectedMinutes } = bestOrder(probabilities, inspections, lockoutMinutes);
        const cheapest = Math.min(
          ...permutations(inspections).map((order) => minutesInOrder(probabilities, order, lockoutMinutes)),
        );
        expect(expectedMinutes).toBeCloseTo(cheapest, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('costs what it says and leaves nothing out', () => {
    fc.assert(
      fc.property(anySearch, ({ probabilities, inspections, lockoutMinutes }) => {
        const { order, expectedMinutes } = bestOrder(probabilities, inspections, lockoutMinutes);
        expect([...order].sort()).toEqual(inspections.map(({ id }) => id).sort());
        const inOrder = order.flatMap((id) => inspections.filter((inspection) => inspection.id === id));
        expect(minutesInOrder(probabilities, inOrder, lockoutMinutes)).toBeCloseTo(expectedMinutes, 9);
      }),
    );
  });

  test('falls in probability over minutes where the costs are independent', () => {
    fc.assert(
      fc.property(independentSearch, ({ probabilities, inspections }) => {
        const { order } = bestOrder(probabilities, inspections, 8);
        const ratios = order.map(
          (id) => (probabilities[Number(id)] ?? 0) / (inspections[Number(id)]?.minutes ?? Number.NaN),
        );
        ratios.slice(1).forEach((ratio, index) => {
          expect(ratio).toBeLessThanOrEqual((ratios[index] ?? 0) + 1e-9);
        });
      }),
    );
  });

  test('never gets dearer when the lockout is already live', () => {
    fc.assert(
      fc.property(anySearch, ({ probabilities, inspections, lockoutMinutes }) => {
        const live = bestOrder(probabilities, inspections, 0).expectedMinutes;
        expect(live).toBeLessThanOrEqual(
          bestOrder(probabilities, inspections, lockoutMinutes).expectedMinutes + 1e-9,
        );
      }),
    );
  });

  test('puts a look before hands where the lockout makes the likelier cause dearer', () => {
    const likelyUnderLockout: Inspection = { id: 'hands', minutes: 1, needsLockout: true, passes: [0, 1] };
    const unlikelyByEye: Inspection = { id: 'eyes', minutes: 1, needsLockout: false, passes: [1, 0] };
    const search = [likelyUnderLockout, unlikelyByEye];
    expect(bestOrder([0.7, 0.3], search, 8).order).toEqual(['eyes', 'hands']);
    expect(bestOrder([0.7, 0.3], search, 0).order).toEqual(['hands', 'eyes']);
  });

  test('of nothing is nothing', () => {
    expect(bestOrder([1], [], 8)).toEqual({ order: [], expectedMinutes: 0 });
  });

  test('is refused for more inspections than the sets can be held for', () => {
    const many = Array.from(
      { length: 17 },
      (_, index): Inspection => ({ id: String(index), minutes: 1, needsLockout: false, passes: [0.5] }),
    );
    expect(() => bestOrder([1], many, 8)).toThrow('An order of 17 inspections is more than 16.');
  });
});

function permutations<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length <= 1) return [items];
  return items.flatMap((item, index) =>
    permutations([...items.slice(0, index), ...items.slice(index + 1)]).map((rest) => [item, ...rest]),
  );
}
