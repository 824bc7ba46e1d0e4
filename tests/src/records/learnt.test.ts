import { describe, expect, it } from 'vitest';
import { NOTHING_LEARNT } from '../../../flows/diagnosis/learning.ts';
import { NEW_JOB } from '../../../flows/job-context.ts';
import { forgotten, keepLearnt, learntFrom, lessonOf, readLearnt } from '../../../src/records/learnt.ts';

const PROVED = { family: 'heldStrandLost', cause: 'holderLoose', outcome: 'proved' } as const;
const ANSWERS = [{ question: 'evidence.knotPlace', said: 'knot.frontEnd' }] as const;

function shelf(): Pick<Storage, 'getItem' | 'setItem'> & { kept: string | null } {
  return {
    kept: null,
    getItem() {
      return this.kept;
    },
    setItem(_, text) {
      this.kept = text;
    },
  };
}

describe('what a tablet learns', () => {
  it('comes from a job with one proved repair, and from no other', () => {
    expect(lessonOf({ ...NEW_JOB, answers: ANSWERS, repairs: [PROVED] })?.found.cause).toBe('holderLoose');
    expect(
      lessonOf({ ...NEW_JOB, answers: ANSWERS, repairs: [{ ...PROVED, outcome: 'stillMisses' }] }),
    ).toBeUndefined();
    // Two repairs proved by one count: nobody knows which of them helped.
    expect(
      lessonOf({ ...NEW_JOB, answers: ANSWERS, repairs: [PROVED, { ...PROVED, cause: 'twineDrags' }] }),
    ).toBeUndefined();
  });

  it('is kept with whether it is used, and read back the same', () => {
    const storage = shelf();
    const learnt = keepLearnt(storage);
    const lesson = lessonOf({ ...NEW_JOB, answers: ANSWERS, repairs: [PROVED] });
    if (!lesson) throw new Error('The job teaches nothing.');
    learnt.value = { ...learntFrom(learnt.value, lesson), isUsed: true };
    expect(readLearnt(storage.kept)).toEqual(learnt.value);
    expect(learnt.value.counts.causes.heldStrandLost.holderLoose).toBe(1);
  });

  it('is not used until somebody says so, and is gone once forgotten', () => {
    expect(keepLearnt(shelf()).value).toEqual({ counts: NOTHING_LEARNT, isUsed: false });
    expect(forgotten().counts.jobs).toBe(0);
  });

  it('begins anew from a place it cannot read, and bears a browser that keeps nothing', () => {
    expect(readLearnt('used\n{"jobs": -1}')).toEqual(forgotten());
    const refusing = () => {
      throw new DOMException('no', 'SecurityError');
    };
    expect(keepLearnt({ getItem: refusing, setItem: refusing }).value).toEqual(forgotten());
  });
});
