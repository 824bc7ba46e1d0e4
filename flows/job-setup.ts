import { assign, not, or, setup, stateIn } from 'xstate';
import type { MeaningId } from '../grammar/lexicon.ts';
import {
  type Answer,
  checkQuestion,
  evidenceQuestion,
  type QuestionId,
  repairQuestion,
} from './diagnosis/answer.ts';
import { beliefsAfter, type Hypothesis } from './diagnosis/beliefs.ts';
import { type Estimates, SEED_ESTIMATES } from './diagnosis/estimates.ts';
import { estimatesFrom } from './diagnosis/learning.ts';
import { findingOf, isPlausible, plausibleIn } from './diagnosis/measured.ts';
import { type HandOverReason, type NextStep, nextStep } from './diagnosis/next-step.ts';
import { sameVisit } from './diagnosis/same-visit.ts';
import { familyById } from './families/all.ts';
import type { Check, FamilyId, Remedy } from './families/family.ts';
import { cleanTiesNeeded } from './figures/clean-ties.ts';
import { type HeardEvent, isHeard, isSystemVoid, type JobEvent } from './heard.ts';
import { isSurelyHeard, mayConfirmByVoice } from './hearing-policy.ts';
import type { JobContext, Need, Notice, Proof, Repair } from './job-context.ts';
import { judgedBy, machineBandFor } from './machine-values.ts';
import type { Ask } from './prompt.ts';

/** Below this a voice cannot clear a lockout step, nor where it was not surely heard; a button still can. Expert estimate. */
const CONFIRMING_SNR_DB = 10;

/** How sure a proof is, as a fraction; the spoken claim says the same. */
export const PROOF_CONFIDENCE = 0.95;

/** The miss rate to rule out where nobody counted the misses before the repair. Expert estimates. */
const ASSUMED_MISS_RATE = 0.1;
const ASSUMED_MISS_RATE_WHEN: Readonly<Partial<Record<MeaningId, number>>> = {
  'when.mostBales': 0.5,
  'next.never': 0.9,
};

/** The check a state is about. */
export interface CheckRef {
  readonly family: FamilyId;
  readonly check: string;
}

/**
 * The vocabulary of the job's charts: every guard and action by its name. The charts are written in these, so
 * that they read like the procedure and can be tried with any one of them taken away.
 */
export const jobSetup = setup({
  types: {
    context: {} as JobContext,
    events: {} as JobEvent,
    meta: {} as Ask,
  },

  guards: {
    // What the machine allows, as the safety region knows it.
    lockedOut: stateIn({ safety: 'lockedOut' }),
    notLockedOut: not('lockedOut'),
    lookAllowed: or([
      stateIn({ safety: 'safeStop' }),
      stateIn({ safety: 'lockingOut' }),
      stateIn({ safety: 'lockedOut' }),
    ]),
    lookForbidden: not('lookAllowed'),
    turningByHand: stateIn({ safety: { handTurn: 'turning' } }),
    notTurningByHand: not('turningByHand'),
    underPower: stateIn({ safety: 'poweredTest' }),
    notUnderPower: not('underPower'),

    // What the inquiry needs of the machine.
    twineCut: ({ context }) => context.twineCut,
    machineNotNeeded: ({ context }) => context.need === 'nothing',
    lookNeeded: ({ context }) => ['look', 'hands', 'handTurn'].includes(context.need),
    handsNeeded: ({ context }) => ['hands', 'handTurn'].includes(context.need),
    handsNotNeeded: ({ context }) => ['nothing', 'look'].includes(context.need),
    handTurnNeeded: ({ context }) => context.need === 'handTurn',
    handTurnNotNeeded: ({ context }) => context.need !== 'handTurn',
    powerNeeded: ({ context }) => context.need === 'power',
    powerNotNeeded: ({ context }) => context.need !== 'power',

    // What was heard.
    heardClearly: ({ event }) => {
      const { channel } = heard(event);
      return (
        channel.by === 'touch' ||
        (isSurelyHeard(channel) && channel.snrDb >= CONFIRMING_SNR_DB && mayConfirmByVoice(channel))
      );
    },
    plausible: ({ event }, { family, check }: CheckRef) => {
      const { measurement } = heard(event).slots;
      const { measure } = checkOf({ family, check });
      return measurement !== undefined && measure !== undefined && isPlausible(measurement, measure);
    },
    someMissed: ({ event }) => (heard(event).slots.missCount?.misses ?? 0) > 0,
    balesGiven: ({ event }) => (heard(event).slots.missCount?.bales ?? 0) > 0,
    threadedSinceCut: ({ context }) => !context.twineCut,
    missedAmongThem: ({ context }) =>
      context.pending?.kind === 'ties' && context.pending.missCount.misses > 0,

    // Where the inquiry goes.
    nextIs: ({ context }, { step }: { step: string }) => stepName(context.next) === step,
    nextIsIn: ({ context }, { family }: { family: FamilyId }) =>
      context.next.kind === 'check' && context.next.family === family,
    causeReferred: ({ context }) => remedyOf(context)?.refer !== undefined,
    remedyAtLockout: ({ context }) => remedyOf(context)?.reach === 'lockout',
    moreRemedySteps: ({ context }) => context.remedyStep + 1 < (remedyOf(context)?.steps.length ?? 0),
    nothingRidesAlong: ({ context }) => rideAlong(context) === undefined,
    pastFirstRemedyStep: ({ context }) => context.remedyStep > 0,
    provedClean: ({ context }) => context.proof !== undefined && context.proof.clean >= context.proof.needed,
  },

  actions: {
    need: assign((_, { need }: { need: Need }) => ({ need })),

    // Spoken before the next question.
    echo: assign(({ event }) => ({
      notices: [{ kind: 'heard', meaning: heard(event).type }] satisfies Notice[],
    })),
    askForClearerVoice: assign(({ event }) => ({
      notices: [
        { kind: mayConfirmByVoice(heard(event).channel) ? 'sayItClearer' : 'confirmByButton' },
      ] satisfies Notice[],
    })),
    sayNothingToGoBackTo: assign({ notices: [{ kind: 'nothingToGoBackTo' }] }),
    sayNoMissesBefore: assign({ notices: [{ kind: 'noMissesBefore' }] }),
    questionValue: assign(({ event }, check: CheckRef) => {
      const { measure } = checkOf(check);
      const unit = heard(event).slots.measurement?.unit;
      if (!measure || !unit) return {};
      return { notices: [{ kind: 'implausible', ...plausibleIn(measure, unit) }] satisfies Notice[] };
    }),
    tell: assign(({ context }, { notice }: { notice: Notice }) => ({
      notices: [...context.notices, notice],
    })),
    tellFamily: assign(({ context }, { family }: { family: FamilyId }) =>
      context.looksLike === family
        ? {}
        : { looksLike: family, notices: [...context.notices, { kind: 'looksLike' as const, family }] },
    ),

    // The lockout.
    voidLockout: assign(({ event }) => ({
      confirmedSteps: [],
      notices: [
        { kind: 'voided', by: isSystemVoid(event) ? event.type : heard(event).type },
      ] satisfies Notice[],
    })),
    reopenSteps: assign(({ context }, { steps }: { steps: readonly string[] }) => ({
      confirmedSteps: context.confirmedSteps.filter((step) => !steps.includes(step)),
    })),
    confirmStep: assign(({ context }, { step }: { step: string }) => ({
      confirmedSteps: [...context.confirmedSteps, step],
      knownSteps: [...new Set([...context.knownSteps, step])],
      ...(step === 'twineSlack' ? { twineCut: true } : {}),
    })),
    noteThreaded: assign({ twineCut: false }),
    forgetSteps: assign({ confirmedSteps: [] }),
    lockoutGoesLive: assign({ lockoutLive: true }),
    lockoutEnds: assign({ lockoutLive: false }),

    // Answers.
    takeEstimates: assign(({ event }) => (event.type === 'estimates.taken' ? { learnt: event.counts } : {})),
    takeMachine: assign(({ event }) => (event.type === 'machine.known' ? { ownBands: event.bands } : {})),
    decide: assign(({ context }) => ({
      next: nextStep(context.answers, context.lockoutLive, estimatesOf(context)),
    })),
    recordSymptom: assign(({ context, event }) => {
      const { type: said, slots } = heard(event);
      const symptom: Answer = { question: 'symptom', said };
      return slots.side
        ? { side: slots.side, answers: [...context.answers, symptom, sideAnswer(slots.side)] }
        : { answers: [...context.answers, symptom] };
    }),
    recordAnswer: assign(({ context, event }, { question }: { question: QuestionId }) => {
      const { type: said } = heard(event);
      const side = said === 'which.left' ? 'left' : said === 'which.right' ? 'right' : context.side;
      return { answers: [...context.answers, { question, said }], ...(side ? { side } : {}) };
    }),
    recordMeasured: assign(({ context }, check: CheckRef) => {
      const { measure } = checkOf(check);
      if (!measure || context.pending?.kind !== 'measurement') return {};
      const { measurement } = context.pending;
      const said = findingOf(measurement, judgedBy(measure, machineBandFor(check, context.ownBands)));
      const answer: Answer = { question: checkQuestion(check.family, check.check), said, measurement };
      return {
        answers: [...context.answers, answer],
        notices: [{ kind: 'heard', meaning: said }] satisfies Notice[],
      };
    }),
    withdrawAnswer: assign(({ context }) => ({ answers: context.answers.slice(0, -1) })),
    holdValue: assign(({ event }) => {
      const { measurement, missCount } = heard(event).slots;
      if (measurement) return { notices: [], pending: { kind: 'measurement' as const, measurement } };
      return missCount ? { notices: [], pending: { kind: 'missCount' as const, missCount } } : {};
    }),

    // The remedy and its proof.
    beginRemedy: assign({ remedyStep: 0 }),
    nextRemedyStep: assign(({ context }) => ({ remedyStep: context.remedyStep + 1 })),
    previousRemedyStep: assign(({ context }) => ({ remedyStep: context.remedyStep - 1 })),
    recordRepair: assign(({ context }) => ({
      repairs: [...context.repairs, { ...namedCause(context), outcome: 'done' as const }],
    })),
    takeAlong: assign(({ context }) => {
      const along = rideAlong(context);
      return along
        ? { next: { kind: 'name' as const, ...along, probability: beliefIn(context, along) } }
        : {};
    }),
    setRemedyAside: assign(({ context }) => ({
      answers: [...context.answers, repairAnswer(namedCause(context), 'skip')],
    })),
    holdTies: assign(({ event }) => {
      const { missCount } = heard(event).slots;
      return missCount ? { notices: [], pending: { kind: 'ties' as const, missCount } } : {};
    }),
    countTies: assign(({ context }) => {
      const { proof, pending } = context;
      if (!proof || pending?.kind !== 'ties') return {};
      const { bales } = pending.missCount;
      return { proof: { ...proof, clean: proof.clean + bales, fromCount: proof.fromCount + bales } };
    }),
    planProof: assign(({ context }) => {
      const before = context.pending?.kind === 'missCount' ? context.pending.missCount : undefined;
      return {
        proof: planOf(before ? before.misses / before.bales : assumedMissRate(context.answers), before),
      };
    }),
    planProofUncounted: assign(({ context }) => ({ proof: planOf(assumedMissRate(context.answers)) })),
    countTie: assign(({ context }) =>
      context.proof ? { proof: { ...context.proof, clean: context.proof.clean + 1 } } : {},
    ),
    recordProved: assign(({ context }) => ({ repairs: weighed(context, 'proved') })),
    recordStillMisses: assign(({ context }) => ({
      answers: [
        ...context.answers,
        ...waitingForProof(context).map((repair) => repairAnswer(repair, 'tie.missed')),
      ],
      repairs: weighed(context, 'stillMisses'),
      notices: [{ kind: 'repairFailed' }] satisfies Notice[],
    })),
    recordHandOver: assign(({ context }, { reason }: { reason?: HandOverReason }) => ({
      handOver: reason ?? (context.next.kind === 'handOver' ? context.next.reason : 'asked'),
    })),
  },
});

/** The name a route of the charts compares with. */
export function stepName(next: NextStep): string {
  switch (next.kind) {
    case 'evidence':
      return `evidence.${next.question}`;
    case 'check':
      return `check.${next.family}.${next.check}`;
    case 'open':
    case 'name':
    case 'handOver':
      return next.kind;
  }
}

/** The check a reference points at. @throws Error where there is none, which validation of the families rules out */
export function checkOf({ family, check }: CheckRef): Check {
  const found = familyById(family)?.checks[check];
  if (!found) throw new Error(`The family ${family} has no check ${check}.`);
  return found;
}

/** Short work worth doing before ties are counted, where it has not been done already. */
export function rideAlong(context: JobContext): Hypothesis | undefined {
  const { answers, next, repairs } = context;
  if (next.kind !== 'name') return undefined;
  return sameVisit(answers, next, estimatesOf(context)).find(
    ({ family, cause }) => !repairs.some((repair) => repair.family === family && repair.cause === cause),
  );
}

/** The remedy of the cause that was named, if one was. */
export function remedyOf({ next }: JobContext): Remedy | undefined {
  return next.kind === 'name' ? familyById(next.family)?.causes[next.cause]?.remedy : undefined;
}

function heard(event: JobEvent): HeardEvent {
  if (!isHeard(event)) throw new Error(`${event.type} is nothing anybody said.`);
  return event;
}

function sideAnswer(side: 'left' | 'right'): Answer {
  return { question: evidenceQuestion('whichKnotter'), said: side === 'left' ? 'which.left' : 'which.right' };
}

function repairAnswer({ family, cause }: Hypothesis, said: MeaningId): Answer {
  return { question: repairQuestion(family, cause), said };
}

function namedCause({ next }: JobContext): Hypothesis {
  if (next.kind !== 'name') throw new Error('No cause was named, so nothing can have been repaired.');
  return { family: next.family, cause: next.cause };
}

/** What was done since ties were last counted: one proof weighs all of it. */
function waitingForProof({ repairs }: JobContext): readonly Repair[] {
  return repairs.filter(({ outcome }) => outcome === 'done');
}

function weighed({ repairs, proof }: JobContext, outcome: 'proved' | 'stillMisses'): readonly Repair[] {
  return repairs.map((repair) =>
    repair.outcome === 'done' ? { ...repair, outcome, ...(proof ? { proof } : {}) } : repair,
  );
}

/** The seed estimates, or those moved by what this tablet has learnt. */
export function estimatesOf({ learnt }: JobContext): Estimates {
  return learnt ? estimatesFrom(learnt) : SEED_ESTIMATES;
}

function beliefIn(context: JobContext, { family, cause }: Hypothesis): number {
  const belief = beliefsAfter(context.answers, estimatesOf(context)).find(
    (entry) => entry.family === family && entry.cause === cause,
  );
  return belief?.probability ?? 0;
}

function planOf(missRateBefore: number, before?: Proof['before']): Proof {
  const needed = cleanTiesNeeded(missRateBefore, PROOF_CONFIDENCE);
  return { missRateBefore, needed, clean: 0, fromCount: 0, ...(before ? { before } : {}) };
}

function assumedMissRate(answers: readonly Answer[]): number {
  return Math.max(ASSUMED_MISS_RATE, ...answers.map(({ said }) => ASSUMED_MISS_RATE_WHEN[said] ?? 0));
}
