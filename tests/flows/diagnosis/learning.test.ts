import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beliefsAfter, familyProbability, priorBeliefs } from '../../../flows/diagnosis/beliefs.ts';
import { type Estimates, EVIDENCE_IDS, SEED_ESTIMATES } from '../../../flows/diagnosis/estimates.ts';
import {
  compared,
  counted,
  countsOf,
  estimatesFrom,
  exportedCounts,
  type LoggedJob,
  NOTHING_LEARNT,
  readCounts,
} from '../../../flows/diagnosis/learning.ts';
import { nextStep } from '../../../flows/diagnosis/next-step.ts';
import { FAMILIES } from '../../../flows/families/all.ts';
import { FAMILY_IDS, SOMETHING_ELSE } from '../../../flows/families/family.ts';
import { anyJob } from './any-answer.ts';

const anyFound = fc
  .constantFrom(...FAMILIES)
  .chain(({ id, causes }) =>
    fc.constantFrom(...Object.keys(causes), SOMETHING_ELSE).map((cause) => ({ family: id, cause })),
  );
const anyLogged: fc.Arbitrary<LoggedJob> = fc.record({ answers: anyJob, found: anyFound });
const anyLog = fc.array(anyLogged, { maxLength: 30 });

function expectProbabilities({ families, causes, evidence }: Estimates): void {
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  expect(sum(Object.values(families))).toBeCloseTo(1, 9);
  for (const family of FAMILY_IDS) {
    expect(sum(Object.values(causes[family]))).toBeCloseTo(1, 9);
    for (const id of EVIDENCE_IDS) expect(sum(evidence[id].map((row) => row[family]))).toBeCloseTo(1, 9);
  }
}

describe('learning from logged jobs', () => {
  test('leaves the seed estimates as they are while nothing was logged', () => {
    const learnt = estimatesFrom(NOTHING_LEARNT);
    for (const row of compared(NOTHING_LEARNT)) expect(row.learnt).toBeCloseTo(row.seed, 12);
    for (const id of EVIDENCE_IDS) {
      learnt.evidence[id].forEach((given, index) => {
        for (const family of FAMILY_IDS) {
          expect(given[family]).toBeCloseTo(SEED_ESTIMATES.evidence[id][index]?.[family] ?? Number.NaN, 12);
        }
      });
    }
  });

  test('keeps every estimate a probability, and rules nothing out', () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const learnt = estimatesFrom(countsOf(log));
        expectProbabilities(learnt);
        for (const { probability } of priorBeliefs(learnt)) expect(probability).toBeGreaterThan(0);
      }),
    );
  });

  test('does not depend on the order of the jobs, and can be carried on later', () => {
    fc.assert(
      fc.property(anyLog, anyLogged, (log, last) => {
        const counts = countsOf([...log, last]);
        expect(countsOf([last, ...log])).toEqual(counts);
        expect(counted(countsOf(log), last)).toEqual(counts);
        expect(counts.jobs).toBe(log.length + 1);
      }),
    );
  });

  test('makes the cause that was found more likely next time, and no other of its family', () => {
    fc.assert(
      fc.property(
        anyLogged.filter(({ found }) => found.cause !== SOMETHING_ELSE),
        ({ answers, found }) => {
          const learnt = estimatesFrom(countsOf([{ answers, found }]));
          expect(learnt.families[found.family]).toBeGreaterThan(SEED_ESTIMATES.families[found.family]);
          for (const [cause, share] of Object.entries(learnt.causes[found.family])) {
            const seed = SEED_ESTIMATES.causes[found.family][cause] ?? Number.NaN;
            if (cause === found.cause) expect(share).toBeGreaterThan(seed);
            else expect(share).toBeLessThan(seed);
          }
        },
      ),
    );
  });

  test('is never silent: nothing changes unless the estimates are handed on', () => {
    const weak: LoggedJob = {
      answers: [{ question: 'evidence.knotPlace', said: 'knot.made' }],
      found: { family: 'knotFailsLater', cause: 'twineWeak' },
    };
    const learnt = estimatesFrom(countsOf(Array.from({ length: 200 }, () => weak)));
    const opened = [{ question: 'symptom', said: 'notSure' }] as const;
    expect(familyProbability(beliefsAfter(opened), 'knotFailsLater')).toBeCloseTo(0.12, 12);
    expect(familyProbability(beliefsAfter(opened, learnt), 'knotFailsLater')).toBeGreaterThan(0.8);
    const told = [
      ...opened,
      { question: 'evidence.knotPlace', said: 'knot.made' },
      { question: 'evidence.whichKnotter', said: 'which.both' },
    ] as const;
    expect(nextStep(told, false).kind).toBe('evidence');
    expect(nextStep(told, false, learnt)).toMatchObject({ kind: 'name', cause: 'twineWeak' });
  });

  test('counts the last of two answers to one question', () => {
    const changed: LoggedJob = {
      answers: [
        { question: 'evidence.endLook', said: 'end.square' },
        { question: 'evidence.endLook', said: 'end.pinched' },
      ],
      found: { family: 'heldStrandLost', cause: 'holderTight' },
    };
    expect(countsOf([changed]).evidence.endLook.map((row) => row.heldStrandLost)).toEqual([0, 1, 0, 0]);
  });

  test('refuses a cause that the family does not have', () => {
    const strange: LoggedJob = { answers: [], found: { family: 'cyclesWrong', cause: 'gremlins' } };
    expect(() => countsOf([strange])).toThrow('The family cyclesWrong has no cause gremlins.');
  });
});

describe('a file of learnt counts', () => {
  test('is read back as it was written', () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const counts = countsOf(log);
        expect(readCounts(exportedCounts(counts))).toEqual({ ok: true, counts });
      }),
    );
  });

  const written = JSON.parse(exportedCounts(NOTHING_LEARNT));
  test.each<[what: string, text: string, reason: RegExp]>([
    ['no JSON', 'counts', /^This file is not JSON\./],
    ['another kind of file', '{"jobs":3}', /^This file holds no learnt counts\./],
    ['null', 'null', /^This file holds no learnt counts\./],
    ['a later version', JSON.stringify({ ...written, version: 9 }), /of version 9, and this app reads 1\./],
    [
      'a negative count',
      JSON.stringify({ ...written, jobs: -1 }),
      /^The count jobs is -1, not a whole number/,
    ],
    [
      'a missing family',
      JSON.stringify({ ...written, families: {} }),
      /^The count families\.heldStrandLost is undefined/,
    ],
    ['a count in words', JSON.stringify({ ...written, jobs: 'ten' }), /^The count jobs is "ten"/],
  ])('is refused where it is %s, and says that nothing was taken', (_, text, reason) => {
    const read = readCounts(text);
    expect(read).toMatchObject({ ok: false, reason: expect.stringMatching(reason) });
    expect(read).toMatchObject({ reason: expect.stringMatching(/Nothing was taken from it/) });
  });
});
