import { describe, expect, it } from 'vitest';
import { createActor, type Snapshot } from 'xstate';
import { FAMILIES } from '../../flows/families/all.ts';
import type { FamilyId } from '../../flows/families/family.ts';
import { jobMachine } from '../../flows/job.ts';
import { checkSafety, type ModelReport } from './safety-model.ts';

/** Long enough for the slowest family on a busy machine. */
const PATIENCE_MS = 120_000;

const reports = new Map<FamilyId, ModelReport>();

/** The check of the charts as they are shipped. */
function checkedOnce(family: FamilyId): ModelReport {
  const report = reports.get(family) ?? checkSafety(family);
  reports.set(family, report);
  return report;
}

describe('every reachable combination of the lockout and a family', () => {
  it.each(FAMILIES.map(({ id }) => id))(
    '%s: no safety claim is broken',
    (family) => {
      const { states, transitions, broken } = checkedOnce(family);
      console.log(`${family}: ${states.length} combinations, ${transitions} transitions`);
      expect([...broken]).toEqual([]);
      // Struck needles are only looked at, so their chart is small.
      expect(states.length).toBeGreaterThan(family === 'needlesStruck' ? 80 : 500);
    },
    PATIENCE_MS,
  );

  it(
    'comes back from storage as it was, and then nobody is admitted',
    () => {
      const { states } = checkedOnce('heldStrandLost');
      for (const state of states) {
        const stored: Snapshot<unknown> = JSON.parse(JSON.stringify(jobMachine.getPersistedSnapshot(state)));
        const actor = createActor(jobMachine, { snapshot: stored }).start();
        const { value, context } = actor.getSnapshot();
        expect({ value, context }).toEqual({ value: state.value, context: state.context });
        actor.send({ type: 'void.restarted' });
        expect(actor.getSnapshot().matches({ safety: { unknown: 'voided' } })).toBe(true);
      }
    },
    PATIENCE_MS,
  );
});

describe('the check itself: without one guard, a claim breaks', () => {
  const always = () => true;
  const never = () => false;
  it.each([
    ['lockedOut', always, 'hands are admitted only in a live lockout'],
    ['notLockedOut', never, 'hands are admitted only in a live lockout'],
    ['lookAllowed', always, 'eyes are admitted only at a machine that stands still'],
    ['lookForbidden', never, 'eyes are admitted only at a machine that stands still'],
    ['turningByHand', always, 'a hand turn is watched only while it turns'],
    ['notTurningByHand', never, 'a hand turn is watched only while it turns'],
    ['underPower', always, 'ties are counted only with nobody near'],
    ['notUnderPower', never, 'ties are counted only with nobody near'],
    ['heardClearly', always, 'a step is confirmed only by its own clear words'],
  ] as const)(
    '%s',
    (guard, replacement, claim) => {
      const { broken } = checkSafety('heldStrandLost', { [guard]: replacement }, claim);
      expect([...broken.keys()]).toContain(claim);
    },
    PATIENCE_MS,
  );
});
