import { describe, expect, it } from 'vitest';
import type { CountEntry, DatedEntry } from '../../../flows/miss-log/entry.ts';
import { countedAfter } from '../../../flows/miss-log/entry.ts';
import { countedBefore, countOffer, withOffer } from '../../../flows/miss-log/offer.ts';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { sayText } from '../../../grammar/say.ts';
import { unspeakable } from '../figures-asked/say-everything.ts';
import { jobAtHolderPull, TestJob } from '../talk.ts';
import { good, miss } from './entries.ts';

function dated(repairs: number, ...entries: readonly CountEntry[]): readonly DatedEntry[] {
  return entries.map((entry) => ({ entry, repairs }));
}

/** The left knotter lets go; its holder was cleaned, which took no lockout apart, and the proof is asked for. */
function atProof(): TestJob {
  return jobAtHolderPull().answer('finding.slipsEasily').answer('thatIsDone').answer('thatIsDone');
}

/** Threaded again under the lockout, and back from a first count of ties. */
function parked(clean = 0): TestJob {
  const job = atProof()
    .answer('value.missRate', { missCount: { misses: 2, bales: 10 } })
    .answer('yes')
    .answer('carryOn')
    .throughSteps();
  for (let tie = 0; tie < clean; tie++) job.answer('tie.good');
  return job.answer('test.finished');
}

function offered(job: TestJob, counted: readonly DatedEntry[]) {
  return countOffer(job.prompt, job.context, counted);
}

describe('what was counted before the repair', () => {
  const counted = [...dated(0, good(57), miss('left'), miss('both'), miss('right')), ...dated(1, good(9))];

  it('is offered where it is asked how often it missed, for the side that is looked at', () => {
    expect(offered(atProof(), counted)).toEqual({
      meaning: 'count.asBefore',
      missCount: { misses: 2, bales: 60 },
    });
  });

  it('is offered nowhere else, nor where nothing was counted or nothing missed', () => {
    expect(offered(new TestJob(), counted)).toBeUndefined();
    expect(offered(atProof(), [])).toBeUndefined();
    expect(offered(atProof(), dated(0, good(60), miss('right')))).toBeUndefined();
  });

  it('is said, with how to take it, in words that have clips, and is listened for only then', () => {
    const job = atProof();
    const offer = offered(job, counted);
    if (!offer) throw new Error('Two misses on the left were counted.');
    const prompt = withOffer(job.prompt, offer);
    expect(sayText(prompt.question)).toContain('before the repair: two out of sixty bales To use that, say:');
    expect(unspeakable([...prompt.question, ...prompt.brief])).toEqual([]);
    expect(activeMeanings(prompt.expecting)).toContain('count.asBefore');
    expect(activeMeanings(job.prompt.expecting)).not.toContain('count.asBefore');
  });
});

describe('what was counted since the repair', () => {
  it('is offered without its first bale, which after threading does not count', () => {
    expect(offered(parked(), dated(1, miss('left'), good(14)))).toEqual({
      meaning: 'count.asTies',
      missCount: { misses: 0, bales: 14 },
    });
    expect(offered(parked(), dated(1, good(1)))).toBeUndefined();
  });

  it('is not offered while the twine is still cut: no bale can have been tied', () => {
    const planned = atProof()
      .answer('value.missRate', { missCount: { misses: 2, bales: 10 } })
      .answer('yes');
    expect(planned.context.twineCut).toBe(true);
    expect(offered(planned, dated(1, good(20)))).toBeUndefined();
    expect(() => planned.answer('count.asTies', { missCount: { misses: 0, bales: 20 } })).toThrow(
      'not taken',
    );
  });

  it('counts as ties only after it was read back and accepted, and none of it twice', () => {
    const counted = dated(1, good(6));
    const job = parked(2).answer('count.asTies', offered(parked(2), counted));
    expect(sayText(job.prompt.question)).toBe('zero out of five bales Is that right?');
    expect(job.context.proof?.clean).toBe(2);
    job.answer('yes');
    expect(job.context.proof).toMatchObject({ clean: 7, fromCount: 5 });
    job.throughSteps().answer('test.finished');
    expect(offered(job, counted)).toBeUndefined();
    expect(offered(job, [...counted, ...dated(1, good(2))])?.missCount).toEqual({ misses: 0, bales: 2 });
  });

  it('proves the repair by as many as any ties do', () => {
    // Two missed of ten before: fourteen in a row, as in the table of trials for 95 % and one in five.
    const job = parked()
      .answer('count.asTies', offered(parked(), dated(1, good(15))))
      .answer('yes');
    expect(job.prompt.state).toBe('job.inquiry.proving.proved');
    expect(job.context.repairs.at(-1)).toMatchObject({ outcome: 'proved', proof: { clean: 14 } });
  });

  it('with a miss on that side sends the job back to looking; a miss on the other is no matter of it', () => {
    const missed = parked()
      .answer('count.asTies', offered(parked(), dated(1, good(9), miss('left'))))
      .answer('yes');
    expect(missed.context.repairs.at(-1)?.outcome).toBe('stillMisses');
    const other = parked()
      .answer('count.asTies', offered(parked(), dated(1, good(9), miss('right'))))
      .answer('yes');
    expect(other.context.proof?.clean).toBe(9);
  });

  it('is dropped after a "no", and the job stays where it can be counted on', () => {
    const job = parked(3)
      .answer('count.asTies', { missCount: { misses: 0, bales: 5 } })
      .answer('no');
    expect(job.context.proof?.clean).toBe(3);
    expect(job.prompt.state).toBe('job.inquiry.proving.parked');
  });
});

it('a failed repair leaves the machine as it is counted next, and a figure takes that for how often it missed before', () => {
  const repair = { family: 'heldStrandLost', cause: 'holderDirty' } as const;
  const counted = [...dated(0, good(9), miss('left')), ...dated(1, good(4)), ...dated(2, good(7))];
  expect(countedBefore({ repairs: [] }, counted)).toEqual([good(9), miss('left')]);
  const failed = { ...repair, outcome: 'stillMisses' } as const;
  expect(countedBefore({ repairs: [failed] }, counted)).toEqual([good(4)]);
  expect(countedBefore({ repairs: [failed, { ...repair, outcome: 'done' }] }, counted)).toEqual([good(4)]);
});

it('what is taken back after a repair may have been counted before it', () => {
  const counted = [...dated(0, good(3), miss('left')), ...dated(1, { kind: 'takeBack' }, good(4))];
  expect(countedAfter(0, counted)).toEqual([good(3)]);
  expect(countedAfter(1, counted)).toEqual([good(4)]);
});
