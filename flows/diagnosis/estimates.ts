import type { MeaningId } from '../../grammar/lexicon.ts';
import { familyById } from '../families/all.ts';
import { FAMILY_IDS, type FamilyId } from '../families/family.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion, FAMILY_PRIORS } from './evidence.ts';

/** What is taken to be true of jobs in general, before the first word of this one. */
export interface Estimates {
  /** Share of jobs by family; sums to one. */
  readonly families: Readonly<Record<FamilyId, number>>;
  /** Share of a family's jobs by cause, something else left out; each family's shares sum to one. */
  readonly causes: Readonly<Record<FamilyId, Readonly<Record<string, number>>>>;
  /** P(answer | family) of every evidence question, one entry an answer in the order of EVIDENCE. */
  readonly evidence: Readonly<Record<EvidenceId, readonly Readonly<Record<FamilyId, number>>[]>>;
}

export const EVIDENCE_IDS = Object.keys(EVIDENCE) as readonly EvidenceId[];

/** The estimates shipped with the app: expert estimates all. */
export const SEED_ESTIMATES: Estimates = {
  families: FAMILY_PRIORS,
  causes: byFamily((family) =>
    Object.fromEntries(Object.entries(familyById(family).causes).map(([cause, { prior }]) => [cause, prior])),
  ),
  evidence: byEvidence((id) => evidenceAnswers(id).map(({ given }) => given)),
};

export function evidenceAnswers(id: EvidenceId): EvidenceQuestion['answers'] {
  return EVIDENCE[id].answers;
}

/** Which of the question's answers a meaning is, or -1 where it tells nothing. */
export function evidenceAnswerIndex(id: EvidenceId, said: MeaningId): number {
  return evidenceAnswers(id).findIndex(({ meanings }) => meanings.includes(said));
}

/** A table with one entry a family. */
export function byFamily<T>(entry: (family: FamilyId) => T): Readonly<Record<FamilyId, T>> {
  return Object.fromEntries(FAMILY_IDS.map((id) => [id, entry(id)])) as Record<FamilyId, T>;
}

/** A table with one entry an evidence question. */
export function byEvidence<T>(entry: (id: EvidenceId) => T): Readonly<Record<EvidenceId, T>> {
  return Object.fromEntries(EVIDENCE_IDS.map((id) => [id, entry(id)])) as Record<EvidenceId, T>;
}
