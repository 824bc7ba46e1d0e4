import type { MeaningId } from '../grammar/lexicon.ts';
import type { Measurement, MissCount } from '../grammar/measurements.ts';
import type { Side } from '../grammar/sides.ts';
import type { Answer } from './diagnosis/answer.ts';
import type { Hypothesis } from './diagnosis/beliefs.ts';
import type { Counts } from './diagnosis/learning.ts';
import type { HandOverReason, NextStep } from './diagnosis/next-step.ts';
import type { FamilyId } from './families/family.ts';
import type { SystemVoid } from './heard.ts';
import type { MachineBand } from './machine-values.ts';

/** What the inquiry needs of the machine before it can go on; the safety region works towards it. */
export type Need = 'nothing' | 'look' | 'hands' | 'handTurn' | 'power';

/** Something said before the next question. */
export type Notice =
  | { readonly kind: 'heard'; readonly meaning: MeaningId }
  | { readonly kind: 'voided'; readonly by: MeaningId | SystemVoid }
  | { readonly kind: 'sayItClearer' }
  | { readonly kind: 'confirmByButton' }
  | { readonly kind: 'implausible'; readonly low: Measurement; readonly high: Measurement }
  | { readonly kind: 'noMissesBefore' }
  | { readonly kind: 'looksLike'; readonly family: FamilyId }
  | { readonly kind: 'safeStopReached' }
  | { readonly kind: 'lockoutLive' }
  | { readonly kind: 'repairFailed' }
  | { readonly kind: 'nothingToGoBackTo' };

/** A value read back, waiting for a yes. */
export type PendingValue =
  | { readonly kind: 'measurement'; readonly measurement: Measurement }
  | { readonly kind: 'missCount'; readonly missCount: MissCount }
  /** Bales counted since the repair, to be taken for ties. */
  | { readonly kind: 'ties'; readonly missCount: MissCount };

export interface Proof {
  /** As told, or undefined where nobody counted and a rate was assumed. */
  readonly before?: MissCount;
  /** Misses a tie before the repair that the proof has to rule out. */
  readonly missRateBefore: number;
  readonly needed: number;
  readonly clean: number;
  /** Bales of the count that are among the clean ties, so that none is taken twice. */
  readonly fromCount: number;
}

/** A remedy that was carried out, with what the count said of it. */
export interface Repair extends Hypothesis {
  readonly proof?: Proof;
  readonly outcome: 'done' | 'proved' | 'stillMisses';
}

/** Everything a job knows. It is worked out from the events alone: no clock, no chance, so a log replays to it. */
export interface JobContext {
  readonly answers: readonly Answer[];
  readonly side?: Side;
  /** Of this tablet's own jobs; missing where the seed estimates serve. */
  readonly learnt?: Counts;
  /** The machine's own limits, as they were when the job began. */
  readonly ownBands: readonly MachineBand[];
  readonly next: NextStep;
  readonly need: Need;
  /** Spoken before the next question; replaced by every event that is taken. */
  readonly notices: readonly Notice[];
  readonly pending?: PendingValue;
  /** Only for the cost of hands-on checks; what may be done is decided by the state, never by this. */
  readonly lockoutLive: boolean;
  /** Steps that were ever confirmed: the second time round their instructions are short. */
  readonly knownSteps: readonly string[];
  /** Steps that hold now, in the order they were confirmed. */
  readonly confirmedSteps: readonly string[];
  /** Cut for the lockout, and not threaded since: the needles are threaded under the lockout before power returns. */
  readonly twineCut: boolean;
  readonly looksLike?: FamilyId;
  readonly remedyStep: number;
  readonly repairs: readonly Repair[];
  readonly proof?: Proof;
  readonly handOver?: HandOverReason;
}

export const NEW_JOB: JobContext = {
  answers: [],
  ownBands: [],
  next: { kind: 'open' },
  need: 'nothing',
  notices: [],
  lockoutLive: false,
  knownSteps: [],
  twineCut: false,
  confirmedSteps: [],
  remedyStep: 0,
  repairs: [],
};
