import { jobSetup } from '../job-setup.ts';
import { LINES } from '../lines.ts';
import { procedure, reopen } from './procedure.ts';
import { HAND_TURN_STEPS, LOCKOUT_STEPS, RELEASE_STEPS, SAFE_STOP_STEPS } from './steps.ts';

type State = Parameters<typeof jobSetup.createStateConfig>[0];

/**
 * Whether eyes, hands or nobody may be at the machine.
 *
 * `unknown` until somebody says otherwise, and again after anything that voids. Seven steps lead to `safeStop`,
 * where eyes may go in; nine more, ending in a try and the person's own words, to `lockedOut`, the only state
 * that admits hands. What the inquiry needs decides how far this goes; nothing but these steps gets it there.
 */
export const safety = jobSetup.createStateConfig({
  id: 'safety',
  initial: 'unknown',
  on: {
    'void.*': { target: '.unknown.voided', actions: 'voidLockout' },
    stop: { target: '.unknown.voided', actions: 'voidLockout' },
  },
  states: {
    unknown: {
      initial: 'fresh',
      states: {
        fresh: {
          entry: 'forgetSteps',
          always: [
            { guard: 'lookNeeded', target: '#safety.stopping' },
            { guard: 'powerNeeded', target: '#safety.releasing' },
          ],
        },
        voided: {
          meta: {
            say: () => [LINES.voidedAsk],
            why: () => [LINES.voidedWhy],
            look: 'knotterFrame',
            expecting: { meanings: ['carryOn'] },
          },
          on: { carryOn: { target: 'fresh', actions: 'echo' } },
        },
      },
    },

    stopping: {
      initial: SAFE_STOP_STEPS[0].id,
      always: [
        { guard: 'machineNotNeeded', target: 'unknown' },
        { guard: 'powerNeeded', target: 'releasing' },
      ],
      states: procedure(SAFE_STOP_STEPS, '#safety.safeStop', 'kept'),
    },

    safeStop: {
      entry: { type: 'tell', params: { notice: { kind: 'safeStopReached' } } },
      always: [
        { guard: 'handsNeeded', target: 'lockingOut' },
        { guard: 'powerNeeded', target: 'releasing' },
      ],
    },

    lockingOut: {
      initial: LOCKOUT_STEPS[0].id,
      always: [
        { guard: 'handsNotNeeded', target: 'safeStop' },
        { guard: 'powerNeeded', target: 'releasing' },
      ],
      states: withTrippedKnotter(procedure(LOCKOUT_STEPS, '#safety.lockedOut', 'kept')),
    },

    lockedOut: {
      entry: ['lockoutGoesLive', { type: 'tell', params: { notice: { kind: 'lockoutLive' } } }],
      exit: 'lockoutEnds',
      always: [
        { guard: 'handTurnNeeded', target: 'handTurn' },
        { guard: 'powerNeeded', target: 'releasing' },
      ],
    },

    /** The test cycle: the shaft stays off and the key in the pocket, hands on the flywheel rim only. */
    handTurn: {
      initial: HAND_TURN_STEPS[0].id,
      states: {
        ...backToTheTryIfUnneeded(procedure(HAND_TURN_STEPS, 'turning', 'passing')),
        turning: turning(LINES.turnByHand, { guard: 'handTurnNotNeeded' }),
      },
    },

    /** A knotter found tripped: its cycle is finished by hand before the lockout goes on. */
    finishingCycle: {
      initial: HAND_TURN_STEPS[0].id,
      states: {
        ...procedure(HAND_TURN_STEPS, 'turning', 'passing'),
        turning: turning(LINES.finishCycle, {}),
      },
    },

    releasing: {
      initial: RELEASE_STEPS[0].id,
      always: { guard: 'powerNotNeeded', target: 'unknown' },
      states: procedure(RELEASE_STEPS, '#safety.poweredTest', 'passing'),
    },

    poweredTest: {
      always: { guard: 'powerNotNeeded', target: 'unknown' },
    },
  },
});

/** Until the blocks come off, a hand turn nobody needs any more goes back to the try, never straight to `lockedOut`. */
function backToTheTryIfUnneeded(states: Record<string, State>): Record<string, State> {
  const back = { guard: 'handTurnNotNeeded', target: '#safety.lockingOut.triedNothingMoved' } as const;
  return {
    ...states,
    toolsOut: { ...states.toolsOut, always: back },
    peopleClear: { ...states.peopleClear, always: back },
  };
}

/** The step that looks at the knotters has a second answer: tripped, and then the cycle is finished first. */
function withTrippedKnotter(states: Record<string, State>): Record<string, State> {
  const step = states.knotterHome;
  if (!step?.meta) throw new Error('The lockout has no step that looks at the knotters.');
  return {
    ...states,
    knotterHome: {
      ...step,
      meta: { ...step.meta, expecting: { meanings: ['lockout.knotterHome', 'lockout.knotterTripped'] } },
      on: {
        ...step.on,
        'lockout.knotterTripped': { target: '#safety.finishingCycle', actions: 'echo' },
      },
    },
  };
}

/** Turning by the rim until the cycle is home; from there the lockout is built again from the flywheel on. */
function turning(begin: string, leave: { readonly guard?: 'handTurnNotNeeded' }): State {
  return jobSetup.createStateConfig({
    meta: {
      say: () => [begin, LINES.handsOnRim],
      brief: () => [LINES.turnBrief],
      why: () => [LINES.turnWhy],
      look: 'flywheel',
      expecting: { meanings: ['handTurn.cycleHome'] },
    },
    entry: reopen(LOCKOUT_STEPS.slice(LOCKOUT_STEPS.findIndex(({ id }) => id === 'flywheelHeld'))),
    on: {
      'handTurn.cycleHome': { ...leave, target: '#safety.lockingOut.flywheelHeld', actions: 'echo' },
    },
  });
}
