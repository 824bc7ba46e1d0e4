import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { jobMachine } from '../../../flows/job.ts';
import { promptOf } from '../../../flows/prompt.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import { lockoutProgress, stepCount } from '../../../src/screens/lockout-progress.ts';

function jobAt(...said: MeaningId[]) {
  const actor = createActor(jobMachine).start();
  const send = (type: MeaningId) => actor.send({ type, slots: {}, channel: { by: 'touch' } });
  for (const meaning of said) send(meaning);
  return { send, progress: () => lockoutProgress(promptOf(actor.getSnapshot())), actor };
}

const STOPPED: readonly MeaningId[] = [
  'lockout.everyoneTold',
  'lockout.energiesKnown',
  'lockout.powerTakeOffOff',
  'lockout.parked',
  'lockout.engineOff',
  'lockout.keyInPocket',
  'lockout.flywheelStopped',
];

describe('the list of lockout steps', () => {
  it('is not there before the shut-down is asked about', () => {
    expect(jobAt().progress()).toBeUndefined();
    expect(stepCount(undefined)).toBeUndefined();
  });

  it('marks what the chart has behind it, where it is, and what is ahead', () => {
    const job = jobAt('symptom.heldStrandLost');
    for (const [at, meaning] of STOPPED.entries()) {
      const marks = job.progress()?.map(({ mark }) => mark);
      expect(marks?.slice(0, at)).toEqual(Array(at).fill('done'));
      expect(marks?.[at]).toBe('now');
      expect(marks?.slice(at + 1).every((mark) => mark === 'ahead')).toBe(true);
      expect(stepCount(job.progress())).toEqual({ now: at + 1, all: 16 });
      job.send(meaning);
    }
    expect(job.progress()).toBeUndefined();
  });

  it('forgets every step that a void took away', () => {
    const job = jobAt('symptom.heldStrandLost', ...STOPPED.slice(0, 5));
    expect(stepCount(job.progress())?.now).toBe(6);
    job.send('void.engineHeard');
    expect(job.progress()).toBeUndefined();
    job.send('carryOn');
    expect(stepCount(job.progress())).toEqual({ now: 1, all: 16 });
  });

  it('steps back with "go back"', () => {
    const job = jobAt('symptom.heldStrandLost', ...STOPPED.slice(0, 3));
    job.send('goBack');
    expect(stepCount(job.progress())?.now).toBe(3);
  });
});
