import type { SnapshotFrom } from 'xstate';
import type { Expecting } from '../grammar/expecting.ts';
import type { Say } from '../grammar/say.ts';
import type { jobMachine } from './job.ts';
import type { JobContext } from './job-context.ts';
import type { PartId } from './knotter.ts';
import { sayNotice } from './sayings.ts';

/**
 * What a state asks, kept as the state's meta. A state that waits at a gate has none: then the safety region
 * has the floor.
 */
export interface Ask {
  readonly say: (context: JobContext) => Say;
  /** Said when it is asked again; the whole where it is missing. */
  readonly brief?: (context: JobContext) => Say;
  readonly why?: (context: JobContext) => Say;
  readonly look: PartId;
  readonly expecting: Expecting;
  /** What a number has to be here; said where one could not be taken. */
  readonly span?: Say;
  /** What bales that were counted one by one can answer here, if anybody counted. */
  readonly takesCount?: TakesCount;
}

/** How often it missed before the repair, or ties since. */
export type TakesCount = 'before' | 'ties';

export type JobSnapshot = SnapshotFrom<typeof jobMachine>;

/** Whether eyes, hands or nobody may be at the machine, as one word for the screen. */
export type SafetyState =
  | 'keepOut'
  | 'stopping'
  | 'eyesOnly'
  /** The lockout is being built or taken down: the step that is asked for, and nothing else. */
  | 'thisStepOnly'
  | 'lockedOut'
  | 'handTurn'
  | 'poweredTest';

/** What the dialogue is at: one question, ready to be spoken, shown and answered. */
export interface Prompt {
  /** The chart's own name of the state, for the record. */
  readonly state: string;
  /** What came of the last answer; spoken before the question. */
  readonly notices: Say;
  readonly question: Say;
  readonly brief: Say;
  readonly why: Say;
  readonly look: PartId;
  readonly expecting: Expecting;
  readonly safety: SafetyState;
  readonly span?: Say;
  readonly takesCount?: TakesCount;
}

/**
 * The prompt of a snapshot. The safety region has the floor when a lockout was voided, and whenever the inquiry
 * waits at a gate; otherwise the inquiry has it.
 * @throws Error where neither region asks anything, which the model check rules out
 */
export function promptOf(snapshot: JobSnapshot): Prompt {
  const asks = Object.entries(snapshot.getMeta()) as [string, Ask | undefined][];
  const safetyAsk = asks.find(([state]) => state.startsWith('job.safety.'));
  const inquiryAsk = asks.find(([state]) => !state.startsWith('job.safety.'));
  const floor = snapshot.matches({ safety: { unknown: 'voided' } }) ? safetyAsk : (inquiryAsk ?? safetyAsk);
  if (!floor?.[1]) throw new Error(`Nothing is asked in ${JSON.stringify(snapshot.value)}.`);
  const [state, ask] = floor;
  const { context } = snapshot;
  const question = ask.say(context);
  return {
    state,
    notices: context.notices.flatMap(sayNotice),
    question,
    brief: ask.brief?.(context) ?? question,
    why: ask.why?.(context) ?? [],
    look: ask.look,
    expecting: ask.expecting,
    safety: safetyOf(snapshot),
    ...(ask.span ? { span: ask.span } : {}),
    ...(ask.takesCount ? { takesCount: ask.takesCount } : {}),
  };
}

/** A job that is closed or handed over: it says so, and then listens no more. */
export function isOver({ state }: Pick<Prompt, 'state'>): boolean {
  return state === 'closed' || state === 'job.inquiry.handedOver';
}

/** The safety region in one word; anything on the way to a state counts as not there yet. */
export function safetyOf(snapshot: JobSnapshot): SafetyState {
  if (snapshot.matches({ safety: 'lockedOut' })) return 'lockedOut';
  if (snapshot.matches({ safety: 'safeStop' })) return 'eyesOnly';
  if (snapshot.matches({ safety: 'lockingOut' }) || snapshot.matches({ safety: 'releasing' }))
    return 'thisStepOnly';
  if (snapshot.matches({ safety: 'handTurn' }) || snapshot.matches({ safety: 'finishingCycle' }))
    return 'handTurn';
  if (snapshot.matches({ safety: 'poweredTest' })) return 'poweredTest';
  if (snapshot.matches({ safety: 'stopping' })) return 'stopping';
  return 'keepOut';
}
