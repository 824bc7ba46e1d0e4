import { FAMILIES, familyById } from '../families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import type { Answer } from './answer.ts';
import { updated } from './bayes.ts';
import {
  EVIDENCE,
  type EvidenceId,
  type EvidenceQuestion,
  FAMILY_PRIORS,
  SYMPTOM_NAMED_RIGHTLY,
} from './evidence.ts';

/** One explanation of the fault: a cause of a family, or something else of that family's kind. */
export interface Hypothesis {
  readonly family: FamilyId;
  readonly cause: string;
}

/** A hypothesis with its probability; a list of these sums to one. */
export interface Belief extends Hypothesis {
  readonly probability: number;
}

export type Beliefs = readonly Belief[];

/** Share of every family that its list of causes does not hold. Expert estimate. */
export const SOMETHING_ELSE_SHARE = 0.05;

/** P(the knotter still misses | the cause that was put right was the true one): a remedy done badly. Expert estimate. */
export const REMEDY_FAILS = 0.1;

/** What is believed before the first word. */
export const PRIOR_BELIEFS: Beliefs = FAMILY_IDS.flatMap((family) => {
  const share = FAMILY_PRIORS[family];
  return [
    ...Object.entries(familyById(family).causes).map(([cause, { prior }]) => ({
      family,
      cause,
      probability: share * (1 - SOMETHING_ELSE_SHARE) * prior,
    })),
    { family, cause: SOMETHING_ELSE, probability: share * SOMETHING_ELSE_SHARE },
  ];
});

/**
 * Bayes' rule over all recorded answers. The order of the answers does not matter; "not sure" and its like
 * change nothing.
 */
export function beliefsAfter(answers: readonly Answer[]): Beliefs {
  const probabilities = updated(
    PRIOR_BELIEFS.map(({ probability }) => probability),
    PRIOR_BELIEFS.map((hypothesis) => answers.reduce((p, answer) => p * likelihood(answer, hypothesis), 1)),
  );
  return PRIOR_BELIEFS.map((belief, index) => ({ ...belief, probability: probabilities[index] ?? 0 }));
}

/** P(this answer | this hypothesis), from the tables; 1 where the answer tells nothing. */
export function likelihood(answer: Answer, { family, cause }: Hypothesis): number {
  const [kind, ...rest] = answer.question.split('.');
  switch (kind) {
    case 'symptom':
      return symptomLikelihood(answer, family);
    case 'evidence':
      return evidenceLikelihood(rest[0] as EvidenceId, answer, family);
    case 'check':
      return checkLikelihood(rest, answer, { family, cause });
    case 'repair':
      return answer.said === 'tie.missed' && rest[0] === family && rest[1] === cause ? REMEDY_FAILS : 1;
    default:
      throw new Error(`No question is called ${answer.question}.`);
  }
}

/** Total probability of a family. */
export function familyProbability(beliefs: Beliefs, family: FamilyId): number {
  return beliefs.reduce((sum, belief) => (belief.family === family ? sum + belief.probability : sum), 0);
}

/** The family most believed in; the first of FAMILY_IDS on a tie. */
export function leadingFamily(beliefs: Beliefs): FamilyId {
  return FAMILY_IDS.reduce((best, id) =>
    familyProbability(beliefs, id) > familyProbability(beliefs, best) ? id : best,
  );
}

function symptomLikelihood(answer: Answer, family: FamilyId): number {
  const named = FAMILIES.find(({ symptom }) => symptom === answer.said);
  if (!named) return 1;
  return named.id === family ? SYMPTOM_NAMED_RIGHTLY : (1 - SYMPTOM_NAMED_RIGHTLY) / (FAMILY_IDS.length - 1);
}

function evidenceLikelihood(id: EvidenceId, { said }: Answer, family: FamilyId): number {
  const question: EvidenceQuestion = EVIDENCE[id];
  return question.answers.find(({ meanings }) => meanings.includes(said))?.given[family] ?? 1;
}

function checkLikelihood([family, id]: readonly string[], { said }: Answer, hypothesis: Hypothesis): number {
  const check = familyById(family as FamilyId).checks[id ?? ''];
  const answer = check?.answers.find(({ meaning }) => meaning === said);
  if (!check || !answer) return 1;
  return answerProbability(check, said, hypothesis.family === family ? hypothesis.cause : SOMETHING_ELSE);
}

/** P(this answer to the check | this cause of the check's family). */
export function answerProbability(check: Check, said: Answer['said'], cause: string): number {
  const answer = check.answers.find(({ meaning }) => meaning === said);
  return answer ? (answer.given[cause] ?? answer.otherwise) : 1;
}
