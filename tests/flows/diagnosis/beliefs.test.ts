import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../flows/diagnosis/answer.ts';
import { updated } from '../../../flows/diagnosis/bayes.ts';
import {
  beliefsAfter,
  familyProbability,
  leadingFamily,
  PRIOR_BELIEFS,
} from '../../../flows/diagnosis/beliefs.ts';
import { evidenceAnswerIndex, SEED_ESTIMATES } from '../../../flows/diagnosis/estimates.ts';
import { EVIDENCE, type EvidenceId, FAMILY_PRIORS } from '../../../flows/diagnosis/evidence.ts';
import { entropyBits } from '../../../flows/diagnosis/information.ts';
import { expectedGainBits } from '../../../flows/diagnosis/next-step.ts';
import { FAMILY_IDS, type FamilyId } from '../../../flows/families/family.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import { anyAnswer, anyJob, NOTHING_LEARNT, QUESTIONS } from './any-answer.ts';

/** Any question but a repair, which is recorded only once it is done. */
const anyQuestion = fc.constantFrom(
  ...QUESTIONS.map(({ question }) => question).filter((question) => !question.startsWith('repair.')),
);

function sumOf(beliefs: ReturnType<typeof beliefsAfter>): number {
  return beliefs.reduce((sum, { probability }) => sum + probability, 0);
}

describe('beliefs', () => {
  test('start from the shares of the families', () => {
    for (const family of FAMILY_IDS) {
      expect(familyProbability(PRIOR_BELIEFS, family)).toBeCloseTo(FAMILY_PRIORS[family], 12);
    }
    expect(sumOf(PRIOR_BELIEFS)).toBeCloseTo(1, 12);
  });

  test('sum to one and rule nothing out, whatever is answered', () => {
    fc.assert(
      fc.property(anyJob, (answers) => {
        const beliefs = beliefsAfter(answers);
        expect(sumOf(beliefs)).toBeCloseTo(1, 9);
        for (const { probability } of beliefs) expect(probability).toBeGreaterThan(0);
      }),
    );
  });

  test('do not depend on the order of the answers', () => {
    const shuffled = anyJob.chain((answers) =>
      fc.tuple(
        fc.constant(answers),
        fc.shuffledSubarray([...answers], { minLength: answers.length, maxLength: answers.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([answers, reordered]) => {
        const inOrder = beliefsAfter(answers);
        beliefsAfter(reordered).forEach(({ probability }, index) => {
          expect(probability).toBeCloseTo(inOrder[index]?.probability ?? Number.NaN, 12);
        });
      }),
    );
  });

  test('are exactly what they were once an answer is taken back', () => {
    fc.assert(
      fc.property(anyJob, anyAnswer, (answers, extra) => {
        const before = beliefsAfter(answers);
        const withExtra = [...answers, extra];
        beliefsAfter(withExtra);
        expect(beliefsAfter(withExtra.slice(0, -1))).toEqual(before);
      }),
    );
  });

  test('are left alone by "not sure", "cannot see it" and "skip"', () => {
    fc.assert(
      fc.property(anyJob, anyQuestion, fc.constantFrom(...NOTHING_LEARNT), (answers, question, said) => {
        const before = beliefsAfter(answers);
        beliefsAfter([...answers, { question, said }]).forEach(({ probability }, index) => {
          expect(probability).toBeCloseTo(before[index]?.probability ?? Number.NaN, 12);
        });
      }),
    );
  });

  test('drop for a cause that was put right in vain, and not for a remedy that was set aside', () => {
    const question = 'repair.heldStrandLost.holderLoose';
    const of = (answers: readonly Answer[]) =>
      beliefsAfter(answers).find(
        ({ family, cause }) => family === 'heldStrandLost' && cause === 'holderLoose',
      );
    const before = of([])?.probability ?? Number.NaN;
    expect(of([{ question, said: 'skip' }])?.probability).toBeCloseTo(before, 12);
    expect(of([{ question, said: 'tie.missed' }])?.probability).toBeLessThan(before / 5);
  });

  test('refuse a question nobody asks', () => {
    const strange = { question: 'weather.today', said: 'yes' } as unknown as Answer;
    expect(() => beliefsAfter([strange])).toThrow('No question is called weather.today.');
  });
});

describe('the evidence tables', () => {
  test('the family shares sum to one', () => {
    expect(Object.values(FAMILY_PRIORS).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12);
  });

  test.each(Object.keys(EVIDENCE) as EvidenceId[])(
    'the answers to %s sum to one under every family',
    (id) => {
      for (const family of FAMILY_IDS) {
        const sum = EVIDENCE[id].answers.reduce((total, { given }) => total + given[family], 0);
        expect(sum, family).toBeCloseTo(1, 12);
      }
    },
  );

  // Worked by an independent script from the same expert estimates: prior times likelihood, normalised. Nobody is
  // taken to be mistaken here, as the tables themselves have it.
  test.each<[said: readonly [EvidenceId, MeaningId][], family: FamilyId, p: number]>([
    [[['knotPlace', 'knot.frontEnd']], 'heldStrandLost', 0.83],
    [
      [
        ['knotPlace', 'knot.frontEnd'],
        ['whichKnotter', 'which.left'],
      ],
      'heldStrandLost',
      0.871,
    ],
    [
      [
        ['knotPlace', 'knot.frontEnd'],
        ['whichKnotter', 'which.right'],
        ['endLook', 'end.square'],
      ],
      'heldStrandLost',
      0.909,
    ],
    [
      [
        ['knotPlace', 'knot.frontEnd'],
        ['whichKnotter', 'which.right'],
        ['endLook', 'end.square'],
        ['whenItMisses', 'when.heavyCrop'],
      ],
      'heldStrandLost',
      0.948,
    ],
    [[['knotPlace', 'knot.topEnd']], 'needleStrandMissed', 0.68],
    [
      [
        ['knotPlace', 'knot.topEnd'],
        ['nextBale', 'next.needsHelp'],
      ],
      'needleStrandMissed',
      0.763,
    ],
    [
      [
        ['knotPlace', 'knot.onBillhook'],
        ['whichKnotter', 'which.left'],
      ],
      'knotHangsOn',
      0.809,
    ],
    [[['knotPlace', 'knot.made']], 'knotFailsLater', 0.638],
    [[['knotPlace', 'knot.noCycle']], 'cyclesWrong', 0.767],
  ])('%j makes %s lead with %f', (said, family, p) => {
    const posterior = said.reduce<readonly number[]>(
      (belief, [id, meaning]) => {
        const given = SEED_ESTIMATES.evidence[id][evidenceAnswerIndex(id, meaning)];
        return updated(
          belief,
          FAMILY_IDS.map((each) => given?.[each] ?? Number.NaN),
        );
      },
      FAMILY_IDS.map((id) => FAMILY_PRIORS[id]),
    );
    expect(posterior[FAMILY_IDS.indexOf(family)]).toBeCloseTo(p, 3);
    const beliefs = beliefsAfter(
      said.map(([id, meaning]) => ({ question: `evidence.${id}`, said: meaning })),
    );
    expect(leadingFamily(beliefs)).toBe(family);
    expect(familyProbability(beliefs, family)).toBeLessThan(p);
  });

  // The same script's expected gains, in bits.
  test.each<[EvidenceId, number]>([
    ['knotPlace', 1.434],
    ['nextBale', 0.477],
    ['endLook', 0.422],
    ['whichKnotter', 0.31],
    ['whenItMisses', 0.202],
  ])('%s is expected to tell %f bits', (id, bits) => {
    expect(expectedGainBits(PRIOR_BELIEFS, id)).toBeCloseTo(bits, 3);
  });
});

describe('entropy', () => {
  test('is largest where nothing is known and nothing where all is', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 2, maxLength: 9 }),
        (weights) => {
          const total = weights.reduce((a, b) => a + b, 0);
          const bits = entropyBits(weights.map((weight) => weight / total));
          expect(bits).toBeGreaterThanOrEqual(0);
          expect(bits).toBeLessThanOrEqual(Math.log2(weights.length) + 1e-9);
        },
      ),
    );
    expect(entropyBits([0.25, 0.25, 0.25, 0.25])).toBe(2);
    expect(entropyBits([1, 0])).toBe(0);
  });
});
