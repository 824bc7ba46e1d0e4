import { assign, type SnapshotFrom } from 'xstate';
import { getAdjacencyMap } from 'xstate/graph';
import type { NextStep } from '../../flows/diagnosis/next-step.ts';
import { familyById } from '../../flows/families/all.ts';
import type { Family, FamilyId } from '../../flows/families/family.ts';
import { type Channel, type JobEvent, SYSTEM_VOIDS } from '../../flows/heard.ts';
import { jobMachine } from '../../flows/job.ts';
import { remedyOf } from '../../flows/job-setup.ts';
import { LOCKOUT_STEPS, SAFE_STOP_STEPS } from '../../flows/lockout/steps.ts';
import { promptOf } from '../../flows/prompt.ts';
import type { ExpectedValue } from '../../grammar/expecting.ts';
import { MEANING_IDS, type MeaningId, riskOf } from '../../grammar/lexicon.ts';
import type { Slots } from '../../grammar/understand.ts';

/**
 * Walks every reachable combination of the lockout and one family, with the diagnosis replaced by "anything may
 * come next", and says which safety claims do not hold.
 *
 * Beliefs, counts and notices are left out of a state's identity: they decide what comes next, and here anything
 * may. That is more than the real job can do, so a claim that holds here holds there.
 */
type Machine = typeof jobMachine;
type Guards = NonNullable<Parameters<Machine['provide']>[0]['guards']>;
type JobSnapshot = SnapshotFrom<Machine>;

/** An event that also says what the diagnosis decides after it, if it is asked. */
type ModelEvent = JobEvent & { readonly decided?: NextStep };

export interface ModelReport {
  readonly states: readonly JobSnapshot[];
  readonly transitions: number;
  /** The claims that failed, each with one state or transition where it did. */
  readonly broken: ReadonlyMap<Claim, string>;
}

const TOUCH: Channel = { by: 'touch' };
const CLEAR_VOICE: Channel = { by: 'voice', margin: 1, snrDb: 30 };
const DOUBTFUL_VOICE: Channel = { by: 'voice', margin: 0.7, snrDb: 30 };
const NOISY_VOICE: Channel = { by: 'voice', margin: 1, snrDb: 3 };
/** Clear for once, in a place where it is hard to hear. */
const VOICE_IN_A_NOISY_PLACE: Channel = { by: 'voice', margin: 1, snrDb: 30, hearing: 'poor' };
const VOICES = [CLEAR_VOICE, DOUBTFUL_VOICE, NOISY_VOICE, VOICE_IN_A_NOISY_PLACE];

const LOCKOUT_IN_FULL = [...SAFE_STOP_STEPS, ...LOCKOUT_STEPS].map(({ id }) => id).join(' ');

/**
 * @param family the family joined to the lockout
 * @param without guards replaced, to see that the check fails without them
 * @param until a claim about states: the walk ends where it is seen broken, for who wants to know only that
 */
export function checkSafety(family: FamilyId, without: Guards = {}, until?: Claim): ModelReport {
  const decisions = decisionsOf(family);
  const machine = jobMachine.provide({
    // Whether something rides along hangs on the beliefs: here it may always, and "no" is the other way.
    guards: { nothingRidesAlong: () => false, ...without },
    actions: {
      decide: assign(({ event, context }) => ({ next: (event as ModelEvent).decided ?? context.next })),
    },
  });
  let isSeenBroken = false;
  const map = getAdjacencyMap<JobSnapshot, ModelEvent, undefined>(machine, {
    events: (snapshot) => eventsIn(snapshot, decisions),
    serializeState: identity,
    // Where a claim is broken already there is nothing more to learn.
    stopWhen: (state) => {
      if (isSeenBroken) return true;
      const claims: Partial<Record<Claim, boolean>> = claimsAbout(state);
      isSeenBroken = until !== undefined && claims[until] === false;
      return Object.values(claims).includes(false);
    },
    limit: 200_000,
  });
  const broken = new Map<Claim, string>();
  let transitions = 0;
  for (const { state, transitions: leaving } of Object.values(map)) {
    noteBroken(broken, claimsAbout(state), () => JSON.stringify(state.value));
    for (const { event, state: next } of Object.values<{ event: ModelEvent; state: JobSnapshot }>(leaving)) {
      transitions += 1;
      noteBroken(
        broken,
        claimsAboutStep(state, event, next),
        () => `${JSON.stringify(state.value)} on ${event.type} to ${JSON.stringify(next.value)}`,
      );
    }
  }
  return { states: Object.values(map).map(({ state }) => state), transitions, broken };
}

/** What must hold, of a state or of a step between two. */
export type Claim = keyof ReturnType<typeof claimsAbout> | keyof ReturnType<typeof claimsAboutStep>;

function claimsAbout(state: JobSnapshot) {
  const reach = reachAdmitted(state);
  return {
    'hands are admitted only in a live lockout':
      reach !== 'lockout' || state.matches({ safety: 'lockedOut' }),
    'eyes are admitted only at a machine that stands still':
      reach !== 'safeStop' ||
      (['safeStop', 'lockingOut', 'lockedOut'] as const).some((safety) => state.matches({ safety })),
    'a hand turn is watched only while it turns':
      reach !== 'handTurn' || state.matches({ safety: { handTurn: 'turning' } }),
    'ties are counted only with nobody near': reach !== 'power' || state.matches({ safety: 'poweredTest' }),
    'a live lockout rests on all sixteen steps in order':
      !state.matches({ safety: 'lockedOut' }) || state.context.confirmedSteps.join(' ') === LOCKOUT_IN_FULL,
    'no state is silent': speaks(state),
    'no state is stuck': isOver(state) || MEANING_IDS.some((type) => movesOn(state, type)),
    'stop is heard everywhere': state.can(asked('stop')),
  };
}

function claimsAboutStep(from: JobSnapshot, event: ModelEvent, to: JobSnapshot) {
  const voids = event.type === 'stop' || event.type.startsWith('void.');
  const entersLockout = to.matches({ safety: 'lockedOut' }) && !from.matches({ safety: 'lockedOut' });
  const confirms = to.context.confirmedSteps.length > from.context.confirmedSteps.length;
  return {
    'every void leads to unknown at once': !voids || to.matches({ safety: { unknown: 'voided' } }),
    'after a void nobody is admitted': !voids || reachAdmitted(to) === 'nothing',
    'only the words of confirmation end a lockout': !entersLockout || event.type === 'lockout.confirmed',
    'a step is confirmed only by its own clear words':
      !confirms || (event.type.startsWith('lockout.') && 'channel' in event && isClear(event.channel)),
  };
}

/** What the inquiry lets somebody do in a state, from the data of the checks and not from the gates. */
function reachAdmitted(state: JobSnapshot): 'nothing' | 'safeStop' | 'lockout' | 'handTurn' | 'power' {
  const { inquiry } = state.value as { inquiry: unknown };
  const path = pathOf(inquiry);
  if (!path.includes('admitted')) return 'nothing';
  const [group = '', id = ''] = path;
  if (group === 'triage') return 'safeStop';
  if (group === 'remedy') return remedyOf(state.context)?.reach ?? 'lockout';
  if (group === 'proving') return id === 'threading' ? 'lockout' : 'power';
  if (id.endsWith('Prepared')) return 'lockout';
  return familyById(group as FamilyId)?.checks[id]?.reach ?? 'lockout';
}

function pathOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  const [key, inner] = Object.entries(value)[0] ?? [];
  return key === undefined ? [] : [key, ...pathOf(inner)];
}

function speaks(state: JobSnapshot): boolean {
  try {
    return promptOf(state).question.length > 0;
  } catch {
    return false;
  }
}

function isOver(state: JobSnapshot): boolean {
  return state.matches({ inquiry: 'closed' }) || state.matches({ inquiry: 'handedOver' });
}

/** Whether a meaning that is asked for here can be taken; what is always understood does not count. */
function movesOn(state: JobSnapshot, type: MeaningId): boolean {
  const { expecting } = promptOf(state);
  return (
    (expecting.meanings.includes(type) || isValueOf(type, expecting.value?.kind)) && state.can(asked(type))
  );
}

function isValueOf(type: MeaningId, kind: ExpectedValue['kind'] | undefined): boolean {
  return (
    (kind === 'measurement' && type === 'value.measured') ||
    (kind === 'missCount' && type === 'value.missRate')
  );
}

function isClear(channel: Channel): boolean {
  return channel.by === 'touch' || channel === CLEAR_VOICE;
}

/** Everything that could happen in a state; where the diagnosis would be asked, every decision it could make. */
function eventsIn(state: JobSnapshot, decisions: readonly NextStep[]): ModelEvent[] {
  const heard = MEANING_IDS.flatMap((type) => variants(type)).filter((event) => state.can(event));
  const system = SYSTEM_VOIDS.map((type): ModelEvent => ({ type }));
  return [...heard, ...system].flatMap((event) =>
    asksDiagnosis(event.type) ? decisions.map((decided) => ({ ...event, decided })) : [event],
  );
}

/** Safety phrases cannot reach the diagnosis; answers, withdrawals and misses can. */
function asksDiagnosis(type: ModelEvent['type']): boolean {
  return (
    !['lockout.', 'handTurn.', 'release.', 'void.'].some((topic) => type.startsWith(topic)) && type !== 'stop'
  );
}

function variants(type: MeaningId): ModelEvent[] {
  const channels = riskOf(type) === 'confirm' ? [TOUCH, ...VOICES] : [TOUCH];
  return channels.map((channel) => ({ ...asked(type), channel }));
}

function asked(type: MeaningId): JobEvent & { slots: Slots } {
  return { type, channel: TOUCH, slots: slotsOf(type) };
}

function slotsOf(type: MeaningId): Slots {
  if (type === 'value.measured') return { measurement: { amount: 30, unit: 'poundForce' } };
  if (type === 'count.asTies') return { missCount: { misses: 0, bales: 3 } };
  if (type === 'value.missRate') return { missCount: { misses: 9, bales: 10 } };
  return {};
}

function decisionsOf(id: FamilyId): NextStep[] {
  const family = familyById(id);
  if (!family) return [];
  return [
    { kind: 'open' },
    { kind: 'evidence', question: 'knotPlace', gainBits: 1 },
    { kind: 'handOver', reason: 'nothingLeftToCheck' },
    ...Object.keys(family.checks).map(
      (check): NextStep => ({ kind: 'check', family: id, check, chanceOfFinding: 0.5, minutes: 1 }),
    ),
    ...oneCauseAShape(family).map(
      (cause): NextStep => ({ kind: 'name', family: id, cause, probability: 0.9 }),
    ),
  ];
}

/** Remedies of one reach and length, referred or not, give the same states: one of each is enough. */
function oneCauseAShape({ causes }: Family): string[] {
  const shapes = new Map(
    Object.entries(causes).map(([cause, { remedy }]) => [
      `${remedy.reach} ${remedy.steps.length} ${remedy.refer !== undefined}`,
      cause,
    ]),
  );
  return [...shapes.values()];
}

function identity({ value, context }: JobSnapshot): string {
  const { need, next, remedyStep, confirmedSteps, twineCut } = context;
  return JSON.stringify({ value, need, next, remedyStep, confirmedSteps, twineCut });
}

function noteBroken(
  broken: Map<Claim, string>,
  claims: Partial<Record<Claim, boolean>>,
  where: () => string,
): void {
  for (const [claim, holds] of Object.entries(claims) as [Claim, boolean][]) {
    if (!holds && !broken.has(claim)) broken.set(claim, where());
  }
}
