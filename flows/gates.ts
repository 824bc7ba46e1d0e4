import type { Need } from './job-context.ts';
import { jobSetup } from './job-setup.ts';

/**
 * The gates between asking and the machine. Work is put behind one here and nowhere else, so that no family can
 * forget it: the work's states are entered only through the gate's guard, and left at once when it stops holding.
 */
type Work = Parameters<typeof jobSetup.createStateConfig>[0];
type GuardName =
  | 'lookAllowed'
  | 'lookForbidden'
  | 'lockedOut'
  | 'notLockedOut'
  | 'turningByHand'
  | 'notTurningByHand'
  | 'underPower'
  | 'notUnderPower';

/** Eyes only, beside a machine that stands still. */
export function atSafeStop(work: Work): Work {
  return gated('look', 'lookAllowed', 'lookForbidden', work);
}

/** Hands on the machine: never without a live lockout. */
export function behindLockout(work: Work): Work {
  return gated('hands', 'lockedOut', 'notLockedOut', work);
}

/** Eyes only, while the cycle is turned by the flywheel rim. */
export function duringHandTurn(work: Work): Work {
  return gated('handTurn', 'turningByHand', 'notTurningByHand', work);
}

/** Counting ties from the seat, with nobody near. */
export function underPower(work: Work): Work {
  return gated('power', 'underPower', 'notUnderPower', work);
}

/** The state whose work may only go on while the gate is open. The safety region has the floor while it waits. */
function gated(need: Need, open: GuardName, shut: GuardName, work: Work): Work {
  return jobSetup.createStateConfig({
    initial: 'waiting',
    entry: { type: 'need', params: { need } },
    states: {
      waiting: { always: { guard: open, target: 'admitted' } },
      admitted: { ...work, always: { guard: shut, target: 'waiting' } },
    },
  });
}
