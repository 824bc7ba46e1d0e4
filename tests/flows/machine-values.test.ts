import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkQuestion } from '../../flows/diagnosis/answer.ts';
import { findingOf } from '../../flows/diagnosis/measured.ts';
import { FAMILIES } from '../../flows/families/all.ts';
import type { CheckRef } from '../../flows/job-setup.ts';
import {
  findingsOf,
  judgedBy,
  MACHINE_VALUE_IDS,
  MACHINE_VALUES,
  type MachineBand,
  type MachineValueId,
  machineBandFor,
  measureOf,
  troubleWith,
} from '../../flows/machine-values.ts';
import { sayOwnBand } from '../../flows/own-band-said.ts';
import { sayText } from '../../grammar/say.ts';
import { unspeakable } from './figures-asked/say-everything.ts';
import { TestJob } from './talk.ts';

/** Limits that run upward inside what is plausible. */
function anyLimits(of: MachineValueId): fc.Arbitrary<MachineBand['limits']> {
  const { plausible, bands } = measureOf(of);
  const { low, high } = plausible;
  const count = bands.length - 1;
  return fc
    .uniqueArray(fc.integer({ min: 1, max: 999 }), { minLength: count, maxLength: count })
    .map((shares) =>
      shares
        .sort((a, b) => a - b)
        .map((share) => ({
          amount: low.amount + (share / 1000) * (high.amount - low.amount),
          unit: high.unit,
        })),
    );
}

describe('the values of a machine', () => {
  it('cover every measured check once', () => {
    const measured = FAMILIES.flatMap(({ id, checks }) =>
      Object.entries(checks).flatMap(([check, { measure }]) => (measure ? [`${id} ${check}`] : [])),
    );
    const covered = MACHINE_VALUE_IDS.flatMap((id) =>
      MACHINE_VALUES[id].checks.map(({ family, check }) => `${family} ${check}`),
    );
    expect(covered.toSorted()).toEqual(measured.toSorted());
  });

  it.each(MACHINE_VALUE_IDS)('%s has as many findings in every check, and one dimension', (id) => {
    for (const { family, check } of MACHINE_VALUES[id].checks) {
      const measure = FAMILIES.find((each) => each.id === family)?.checks[check]?.measure;
      expect(measure?.bands).toHaveLength(findingsOf(id).length);
      expect(measure?.dimension).toBe(measureOf(id).dimension);
    }
  });
});

describe.each(MACHINE_VALUE_IDS)('own limits of %s', (of) => {
  it('go before the typical ones wherever they differ', () => {
    fc.assert(
      fc.property(anyLimits(of), fc.double({ min: 0, max: 1, noNaN: true }), (limits, share) => {
        const measure = measureOf(of);
        const { low, high } = measure.plausible;
        const amount = low.amount + share * (high.amount - low.amount);
        expect(troubleWith({ of, limits })).toEqual([]);
        const said = findingOf(
          { amount, unit: high.unit },
          judgedBy(measure, { of, limits, source: 'plate' }),
        );
        const below = limits.filter((limit) => amount >= limit.amount).length;
        expect(said).toBe(findingsOf(of)[below]);
      }),
    );
  });

  it('can be spoken', () => {
    fc.assert(
      fc.property(anyLimits(of), (limits) => {
        expect(unspeakable(sayOwnBand({ of, limits, source: 'plate' }))).toEqual([]);
      }),
    );
  });

  it('are refused where they are too few, upside down or beyond what can be', () => {
    const { plausible } = measureOf(of);
    const beyond = { amount: plausible.high.amount * 2 + 1, unit: plausible.high.unit };
    expect(troubleWith({ of, limits: [] })).toHaveLength(1);
    expect(
      troubleWith({
        of,
        limits: findingsOf(of)
          .slice(1)
          .map(() => beyond),
      })[0],
    ).toMatch(/between/);
  });
});

it('limits that run downward are refused', () => {
  const limits = [60, 40].map((amount) => ({ amount, unit: 'poundForce' as const }));
  expect(troubleWith({ of: 'holderPull', limits })).toEqual(['The second number has to be the higher one.']);
});

/** Limits far above the typical ones, for every value. */
const OWN: readonly MachineBand[] = MACHINE_VALUE_IDS.map((of) => {
  const { bands, plausible } = measureOf(of);
  const { low, high } = plausible;
  const limits = bands.slice(1).map((_, at) => ({
    amount: Math.round(low.amount + (0.7 + at / 10) * (high.amount - low.amount)),
    unit: high.unit,
  }));
  return { of, limits, source: 'page 34 of its manual' };
});

describe('a job that knows its machine', () => {
  /** Goes on, everything found in order, until something is measured. */
  function atMeasure(job: TestJob): CheckRef {
    job.answer('symptom.heldStrandLost');
    for (let step = 0; step < 200; step++) {
      job.throughSteps();
      const { state, expecting } = job.prompt;
      const [, , family, check = ''] = state.split('.');
      const found = FAMILIES.find(({ id }) => id === family);
      if (found && expecting.value?.kind === 'measurement') return { family: found.id, check };
      const inOrder = found?.checks[check]?.answers.find(({ pointsAtFault }) => !pointsAtFault)?.meaning;
      const [first = 'notSure'] = expecting.meanings;
      job.answer(inOrder && expecting.meanings.includes(inOrder) ? inOrder : first);
    }
    throw new Error('Nothing was ever measured.');
  }

  it('judges by what was entered for it, and says so beside what is typical', () => {
    const typical = new TestJob();
    const check = atMeasure(typical);
    const known = new TestJob();
    known.send({ type: 'machine.known', bands: OWN });
    expect(atMeasure(known)).toEqual(check);
    const own = machineBandFor(check, OWN);
    if (!own) throw new Error('Every measured check has a value of a machine.');
    const { typically, plausible } = measureOf(own.of);
    expect(known.prompt.why.join(' ')).toContain(sayText(sayOwnBand(own)));
    expect(sayText(known.prompt.why)).toContain(`${typically} Check the manual of your machine.`);
    expect(sayText(typical.prompt.why)).not.toContain('you entered');
    const amount = (plausible.low.amount + plausible.high.amount) / 2;
    for (const job of [typical, known]) {
      job.answer('value.measured', { measurement: { amount, unit: plausible.high.unit } }).answer('yes');
    }
    const saidOf = (job: TestJob) =>
      job.context.answers.find(({ question }) => question === checkQuestion(check.family, check.check))?.said;
    expect(saidOf(typical)).toBe(findingsOf(own.of).at(-1));
    expect(saidOf(known)).toBe(findingsOf(own.of)[0]);
  });

  it('is told only as it begins', () => {
    const job = new TestJob().answer('symptom.heldStrandLost');
    job.send({ type: 'machine.known', bands: OWN });
    expect(job.context.ownBands).toEqual([]);
  });
});
