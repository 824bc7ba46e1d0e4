import { describe, expect, it } from 'vitest';
import { FAMILIES } from '../../../flows/families/all.ts';
import type { JobContext } from '../../../flows/job-context.ts';
import type { MachineBand } from '../../../flows/machine-values.ts';
import type { JobSnapshot } from '../../../flows/prompt.ts';
import { partLines } from '../../../src/report/part-lines.ts';
import { TestJob } from '../../flows/talk.ts';

function jobThat(changes: Partial<JobContext>): JobSnapshot {
  const snapshot = new TestJob().answer('symptom.heldStrandLost').actor.getSnapshot();
  return { ...snapshot, context: { ...snapshot.context, ...changes } } as JobSnapshot;
}

const NAMED = { kind: 'name', family: 'heldStrandLost', cause: 'discWorn', probability: 0.9 } as const;
const PULL = {
  question: 'check.heldStrandLost.holderPull',
  said: 'finding.slipsEasily',
  measurement: { amount: 20, unit: 'poundForce' },
} as const;
const OWN: MachineBand = {
  of: 'holderPull',
  limits: [
    { amount: 25, unit: 'poundForce' },
    { amount: 35, unit: 'poundForce' },
  ],
  source: 'page 34',
};

describe('the parts list', () => {
  it('holds what the named cause takes, one a knotter, wanted now', () => {
    const one = partLines(jobThat({ next: NAMED }), 'left');
    expect(one.map(({ name }) => name)).toEqual(['twine disc', 'twine holder']);
    for (const line of one) expect(line).toMatchObject({ side: 'left', quantity: 1, urgency: 'now' });
    for (const line of partLines(jobThat({ next: NAMED }), 'both')) expect(line.quantity).toBe(2);
  });

  it('holds what a repair fitted, to be had again before the next cutting, and lists it once', () => {
    const repairs = [{ family: NAMED.family, cause: NAMED.cause, outcome: 'proved' }] as const;
    const lines = partLines(jobThat({ next: NAMED, repairs }), 'left');
    expect(lines.map(({ state, urgency }) => [state, urgency])).toEqual([
      ['forRepairDone', 'beforeNextCutting'],
      ['forRepairDone', 'beforeNextCutting'],
    ]);
  });

  it('gives the measured reason with what it was held against, the machine’s own limit first', () => {
    const next = { ...NAMED, cause: 'holderSpringCracked' } as const;
    const [typical] = partLines(jobThat({ next, answers: [PULL] }), 'left');
    const [own] = partLines(jobThat({ next, answers: [PULL], ownBands: [OWN] }), 'left');
    expect(typical?.reason).toContain('20 lbf');
    expect(typical?.reason).toContain('(Typical is forty to sixty pounds.)');
    expect(own?.reason).toContain('(Limit of this machine: 25 lbf to 35 lbf, from page 34.)');
  });

  it('leaves the number open for what is bought by the set or by the ball, in every family', () => {
    const names = FAMILIES.flatMap(({ id, causes }) =>
      Object.keys(causes).flatMap((cause) =>
        partLines(jobThat({ next: { kind: 'name', family: id, cause, probability: 0.5 } }), 'right'),
      ),
    );
    expect(names.filter(({ quantity }) => quantity === undefined).map(({ name }) => name)).toEqual(
      expect.arrayContaining(['baler twine', 'shims', 'knotter shaft bushings']),
    );
    expect(names.filter(({ quantity }) => quantity !== undefined).map(({ name }) => name)).toEqual(
      expect.arrayContaining(['twine disc', 'clutch pawl', 'shear bolt or key']),
    );
  });
});
