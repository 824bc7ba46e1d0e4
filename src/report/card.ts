import type { Provenance } from '../../flows/families/family.ts';
import type { Repair } from '../../flows/job-context.ts';
import type { PartId } from '../../flows/knotter.ts';
import type { MachineBand } from '../../flows/machine-values.ts';
import type { SafetyState } from '../../flows/prompt.ts';
import type { Measurement } from '../../grammar/measurements.ts';
import type { Side } from '../../grammar/sides.ts';
import type { JobStatus, Symptom } from '../records/job-header.ts';
import type { Initials } from '../records/log-entry.ts';
import type { MachineProfile } from '../records/machine.ts';
import type { PhotoOf } from '../records/photo.ts';
import type { BaleCount } from './count-lines.ts';

/** Everything a job record has to say, worked out from the log and ready to be laid on paper, or into a file. */
export interface JobCard {
  readonly jobId: string;
  readonly startedAtMs: number;
  readonly lastAtMs: number;
  readonly status: JobStatus;
  readonly person?: Initials;
  readonly machine?: MachineProfile;
  readonly side?: WhichSide;
  readonly symptom?: Symptom;
  /** Answers that told something, in the order they were given; what was taken back is not among them. */
  readonly findings: readonly Finding[];
  readonly repairs: readonly RepairLine[];
  readonly parts: readonly PartLine[];
  readonly lockout: readonly LockoutLine[];
  /** Causes of the likeliest family that the findings speak against, the same as the voice counts. */
  readonly excluded: readonly Suspect[];
  /** Explanations still worth a thought, likeliest first. */
  readonly suspects: readonly Suspect[];
  /** How the likeliest explanations rose and fell with every answer. */
  readonly beliefs: BeliefPath;
  /** Figures asked for during the job. */
  readonly figures: readonly FigureLine[];
  /** Bales counted one by one, where somebody did. */
  readonly count?: BaleCount;
  readonly photos: readonly PhotoLine[];
  readonly notes: readonly Note[];
  readonly unresolved: readonly string[];
  readonly machineAsLeft: string;
  readonly notToDo: readonly string[];
  readonly cautions: readonly string[];
}

export interface Finding {
  readonly kind: 'evidence' | 'check';
  readonly atMs: number;
  readonly part: PartId;
  readonly asked: string;
  readonly answer: string;
  readonly pointsAtFault: boolean;
  readonly measured?: MeasuredFinding;
}

export interface MeasuredFinding {
  readonly value: Measurement;
  /** The typical band in words, as it is spoken. */
  readonly typically: string;
  /** Where that band comes from. */
  readonly provenance: Provenance;
  /** The machine's own limits, which were gone by, and where they came from. */
  readonly own?: MachineBand;
}

export interface RepairLine {
  readonly cause: string;
  /** What was done, one instruction a line. */
  readonly steps: readonly string[];
  readonly outcome: Repair['outcome'];
  readonly proof?: ProofLine;
}

/** What the counted ties say of a repair. */
export interface ProofLine {
  readonly before: BeforeRepair;
  /** Clean ties in a row it takes at the confidence below. */
  readonly needed: number;
  readonly clean: number;
  /** As a fraction. */
  readonly confidence: number;
  /** Highest miss rate still believable after the clean run, one-sided and exact; missing where nothing is proved. */
  readonly atMost?: number;
  /** Chance of so clean a run had the repair changed nothing (Fisher's exact test); where the misses were counted. */
  readonly chanceOfNoChange?: number;
  /** The claim in plain words with its number; never more than the ties counted bear out. */
  readonly claim: string;
}

export type BeforeRepair =
  | {
      readonly counted: true;
      readonly misses: number;
      readonly ties: number;
      readonly rate: number;
      /** Exact two-sided interval of the rate. */
      readonly lower: number;
      readonly upper: number;
    }
  /** Nobody had counted; a rate was taken for granted, an expert estimate. */
  | { readonly counted: false; readonly rate: number };

/** Seen from behind the baler. */
export type WhichSide = Side | 'both' | 'nowOneNowTheOther';

/** By when a part has to be there. Expert estimate. */
export type Urgency = 'now' | 'beforeNextCutting' | 'endOfSeason';

export interface PartLine {
  readonly name: string;
  readonly side?: WhichSide;
  /** The cause, and the findings behind it. */
  readonly reason: string;
  /** Whether it belongs to a repair that was done, or to one that is still to be done. */
  readonly state: 'forRepairDone' | 'toOrder';
  /** How many; missing for what is bought by the set or by the ball. */
  readonly quantity?: number;
  readonly urgency: Urgency;
}

export type LockoutLine =
  | {
      readonly kind: 'confirmed';
      readonly atMs: number;
      readonly text: string;
      /** Published clauses the step answers; empty where it answers none. */
      readonly answersTo: readonly string[];
      readonly by: 'voice' | 'button';
    }
  | { readonly kind: 'reached'; readonly atMs: number; readonly state: SafetyState; readonly text: string }
  | { readonly kind: 'voided'; readonly atMs: number; readonly text: string }
  /** Said, but not clearly enough to count. */
  | { readonly kind: 'notTaken'; readonly atMs: number; readonly text: string };

export interface Suspect {
  readonly cause: string;
  readonly probability: number;
  /** For what is excluded: the findings that speak against it. For what is not: those that speak for it. */
  readonly because: readonly string[];
}

/** Probabilities before the first answer and after each, for the explanations that end likeliest. */
export interface BeliefPath {
  /** What was answered, in order. */
  readonly answers: readonly string[];
  /** One more probability than there are answers. */
  readonly causes: readonly { readonly cause: string; readonly probabilities: readonly number[] }[];
}

/** A figure as it was said, and what it takes for granted. */
export interface FigureLine {
  readonly atMs: number;
  readonly text: string;
  readonly granted: readonly string[];
}

export interface PhotoLine {
  readonly atMs: number;
  readonly photoId: string;
  readonly of: PhotoOf;
  readonly side?: Side;
}

export interface Note {
  readonly atMs: number;
  readonly text: string;
}
