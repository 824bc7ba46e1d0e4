import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Measurement } from '../../grammar/measurements.ts';
import type { FamilyId } from '../families/family.ts';
import type { EvidenceId } from './evidence.ts';

/** What was asked: the opening words, an evidence question, a family's check, or the proof of a repair. */
export type QuestionId =
  | 'symptom'
  | `evidence.${EvidenceId}`
  | `check.${FamilyId}.${string}`
  | `repair.${FamilyId}.${string}`;

/** One recorded answer. Beliefs are worked out from the list of these alone, so withdrawing one undoes it exactly. */
export interface Answer {
  readonly question: QuestionId;
  readonly said: MeaningId;
  /** The number given, where the answer was a measurement. */
  readonly measurement?: Measurement;
}

export function checkQuestion(family: FamilyId, check: string): QuestionId {
  return `check.${family}.${check}`;
}

export function evidenceQuestion(id: EvidenceId): QuestionId {
  return `evidence.${id}`;
}

export function repairQuestion(family: FamilyId, cause: string): QuestionId {
  return `repair.${family}.${cause}`;
}
