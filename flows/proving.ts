import { and } from 'xstate';
import { behindLockout, underPower } from './gates.ts';
import { jobSetup } from './job-setup.ts';
import { LINES } from './lines.ts';
import { procedure } from './lockout/procedure.ts';
import { READY_STEPS } from './lockout/steps.ts';
import { sayClaim, sayCount, sayPending, sayProofPlan } from './sayings.ts';

type State = Parameters<typeof jobSetup.createStateConfig>[0];

/** With the twine still cut no bale can have been tied since. */
const takeTies = {
  guard: and(['threadedSinceCut', 'balesGiven']),
  target: '#proving.acceptingTies',
  actions: 'holdTies',
} as const;

/**
 * The proof of a repair: how often it missed before, how many clean ties rule that out, and the count itself,
 * from the seat. One miss sends the job back to looking.
 */
export const proving: State = jobSetup.createStateConfig({
  id: 'proving',
  initial: 'askingRate',
  states: {
    askingRate: {
      entry: { type: 'need', params: { need: 'nothing' } },
      meta: {
        say: () => [LINES.missRate],
        why: () => [LINES.missRateWhy],
        look: 'failedString',
        expecting: { meanings: ['notSure'], value: { kind: 'missCount' } },
        takesCount: 'before',
      },
      on: {
        'value.missRate': [
          { guard: 'someMissed', target: 'acceptingRate', actions: 'holdValue' },
          { actions: 'sayNoMissesBefore' },
        ],
        notSure: { target: 'planned', actions: ['echo', 'planProofUncounted'] },
      },
    },

    acceptingRate: {
      meta: {
        say: sayPending,
        why: () => [LINES.acceptWhy],
        look: 'failedString',
        expecting: { meanings: ['yes', 'no'] },
      },
      on: {
        yes: { target: 'planned', actions: ['echo', 'planProof'] },
        no: { target: 'askingRate', actions: 'echo' },
        goBack: { target: 'askingRate', actions: 'echo' },
      },
    },

    planned: {
      meta: {
        say: sayProofPlan,
        why: () => [LINES.missRateWhy],
        look: 'bale',
        expecting: { meanings: ['carryOn', 'proof.later'] },
        takesCount: 'ties',
      },
      on: {
        carryOn: { target: 'gettingReady', actions: 'echo' },
        'proof.later': { target: 'parked', actions: 'echo' },
        'count.asTies': takeTies,
        goBack: { target: 'askingRate', actions: 'echo' },
      },
    },

    /** Bales that were counted one by one since the repair: read back, and then they count as ties do. */
    acceptingTies: {
      meta: {
        say: sayPending,
        why: () => [LINES.acceptWhy],
        look: 'bale',
        expecting: { meanings: ['yes', 'no'] },
      },
      on: {
        yes: [
          { guard: 'missedAmongThem', target: '#deciding', actions: 'recordStillMisses' },
          { target: 'weighing', actions: ['echo', 'countTies'] },
        ],
        no: { target: 'parked', actions: 'echo' },
        goBack: { target: 'parked', actions: 'echo' },
      },
    },

    gettingReady: { always: [{ guard: 'twineCut', target: 'threading' }, { target: 'running' }] },

    threading: behindLockout({
      initial: READY_STEPS[0].id,
      states: procedure(READY_STEPS, '#proving.threaded', 'passing'),
    }),

    threaded: { entry: 'noteThreaded', always: 'running' },

    running: underPower({
      meta: {
        say: sayCount,
        why: () => [LINES.missRateWhy],
        look: 'bale',
        expecting: { meanings: ['tie.good', 'tie.missed', 'test.finished'] },
      },
      on: {
        'tie.good': { target: '#proving.weighing', actions: ['echo', 'countTie'] },
        'tie.missed': { target: '#deciding', actions: 'recordStillMisses' },
        'test.finished': { target: '#proving.parked', actions: 'echo' },
      },
    }),

    weighing: { always: [{ guard: 'provedClean', target: 'proved' }, { target: 'running' }] },

    parked: {
      entry: { type: 'need', params: { need: 'nothing' } },
      meta: {
        say: () => [LINES.parked],
        why: () => [LINES.missRateWhy],
        look: 'bale',
        expecting: { meanings: ['carryOn'] },
        takesCount: 'ties',
      },
      on: { carryOn: { target: 'gettingReady', actions: 'echo' }, 'count.asTies': takeTies },
    },

    proved: {
      entry: ['recordProved', { type: 'need', params: { need: 'nothing' } }],
      meta: {
        say: sayClaim,
        why: () => [LINES.closeWhy],
        look: 'bale',
        expecting: { meanings: ['yes', 'no'] },
      },
      on: {
        yes: { target: '#closed', actions: 'echo' },
        no: { target: 'parked', actions: 'echo' },
      },
    },
  },
});
