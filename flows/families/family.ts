import type { MeaningId, SymptomMeaning } from '../../grammar/lexicon.ts';
import type { Dimension, Measurement } from '../../grammar/measurements.ts';
import type { PartId } from '../knotter.ts';

/** The nine ways a twine knotter fails, by what is seen on the string or the machine. */
export const FAMILY_IDS = [
  'heldStrandLost',
  'needleStrandMissed',
  'noKnotEitherEnd',
  'knotHangsOn',
  'knotFailsLater',
  'twineFeedLost',
  'cyclesWrong',
  'needlesStruck',
  'bothSidesNowAndThen',
] as const;

export type FamilyId = (typeof FAMILY_IDS)[number];

/** The cause that always keeps some probability: whatever this family's list does not hold. */
export const SOMETHING_ELSE = 'somethingElse';

/**
 * How near a check has to go, which decides what must be confirmed first.
 * - `safeStop`: eyes, ears and a torch; nothing crosses the guard line.
 * - `lockout`: hands, gauges, marks or a stick on the machine.
 * - `handTurn`: the cycle turned by the flywheel rim, eyes only.
 */
export type Reach = 'safeStop' | 'lockout' | 'handTurn';

/** Where a number of the trade comes from. None of them is the maker's: the operator's manual wins. */
export type Provenance =
  | 'common practice, no source'
  | 'from memory'
  | 'expert estimate'
  | `published: ${string}`;

/** A fault family: its causes, and the checks that tell them apart. Every probability is an expert estimate. */
export interface Family<CauseId extends string = string> {
  readonly id: FamilyId;
  /** Completes "It looks like ...". */
  readonly name: string;
  readonly symptom: SymptomMeaning;
  readonly causes: Readonly<Record<CauseId, Cause>>;
  readonly checks: Readonly<Record<string, Check<CauseId>>>;
}

export interface Cause {
  /** Completes "The likely cause: ...". */
  readonly name: string;
  /** Share of this family's jobs, before any check; a family's shares sum to one. Expert estimate. */
  readonly prior: number;
  readonly remedy: Remedy;
}

export interface Remedy {
  /** How near the work goes. */
  readonly reach: Exclude<Reach, 'handTurn'>;
  /** Spoken one at a time. */
  readonly steps: readonly [string, ...string[]];
  /** Expert estimate. */
  readonly minutes: number;
  /** What somebody has to buy, where the remedy fits a new part. */
  readonly parts?: readonly string[];
  /** Set where the work belongs to the dealer or a licensed technician, with the reason spoken. */
  readonly refer?: string;
}

export interface Check<CauseId extends string = string> {
  readonly reach: Reach;
  readonly look: PartId;
  /** Said before the question where something has to be done first, one instruction each. */
  readonly prepare?: readonly string[];
  readonly ask: string;
  readonly why: string;
  /** Minutes for the check itself, without any lockout. Expert estimate. */
  readonly minutes: number;
  readonly answers: readonly [CheckAnswer<CauseId>, CheckAnswer<CauseId>, ...CheckAnswer<CauseId>[]];
  readonly measure?: Measure;
}

/** One accepted answer, with how likely it is under each cause. Expert estimates. */
export interface CheckAnswer<CauseId extends string = string> {
  readonly meaning: MeaningId;
  /** P(this answer | cause) for the causes that make it more or less likely than the rest. */
  readonly given: Readonly<Partial<Record<CauseId, number>>>;
  /** P(this answer | any other cause, something else included). */
  readonly otherwise: number;
  /** Whether this answer points at a fault, so that the search may stop here. */
  readonly pointsAtFault: boolean;
}

/** A number that may be given instead of an answer; the band it falls in is the answer. */
export interface Measure {
  readonly dimension: Dimension;
  /** What may be said at all; anything outside is questioned, not stored. */
  readonly plausible: { readonly low: Measurement; readonly high: Measurement };
  readonly bands: readonly Band[];
  readonly provenance: Provenance;
  /** Typical band in words, always followed by the advice to check the operator's manual. */
  readonly typically: string;
}

/** From the lowest band up; the last has no upper end. */
export interface Band {
  readonly below?: Measurement;
  readonly means: MeaningId;
}

/** Keeps a family's cause names as literal types, so a check that names an unknown cause does not compile. */
export function defineFamily<const CauseId extends string>(family: Family<CauseId>): Family<CauseId> {
  return family;
}
