import { FAMILIES, familyById } from '../families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import type { Answer } from './answer.ts';
import { updated } from './bayes.ts';
import { type Estimates, evidenceAnswerIndex, evidenceAnswers, SEED_ESTIMATES } from './estimates.ts';
import { type EvidenceId, SYMPTOM_NAMED_RIGHTLY } from './evidence.ts';

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

/** Share of answers that are not what the machine shows: misread, misheard or misremembered. Expert estimate. */
export const MISTAKEN_ANSWERS = 1 / 12;

/** What is believed before the first word, by the estimates shipped with the app. */
export const PRIOR_BELIEFS: Beliefs = priorBeliefs(SEED_ESTIMATES);

/** What is believed before the first word. */
export function priorBeliefs({ families, causes }: Estimates): Beliefs {
  return FAMILY_IDS.flatMap((family) => [
    ...Object.entries(causes[family]).map(([cause, share]) => ({
      family,
      cause,
      probability: families[family] * (1 - SOMETHING_ELSE_SHARE) * share,
    })),
    { family, cause: SOMETHING_ELSE, probability: families[family] * SOMETHING_ELSE_SHARE },
  ]);
}

/**
 * Bayes' rule over all recorded answers. The order of the answers does not matter; "not sure" and its like
 * change nothing.
 */
export function beliefsAfter(answers: readonly Answer[], estimates: Estimates = SEED_ESTIMATES): Beliefs {
  const prior = estimates === SEED_ESTIMATES ? PRIOR_BELIEFS : priorBeliefs(estimates);
  const columns = answers.map((answer) => likelihoods(answer, prior, estimates));
  const probabilities = updated(
    prior.map(({ probability }) => probability),
    prior.map((_, index) => columns.reduce((p, column) => p * (column[index] ?? 1), 1)),
  );
  return prior.map((belief, index) => ({ ...belief, probability: probabilities[index] ?? 0 }));
}

/** Every column worked out so far: a job asks the same again after each answer. */
const COLUMNS = new WeakMap<Estimates, Map<string, readonly number[]>>();

/** The likelihood of an answer under every hypothesis, in the order of the prior beliefs. */
function likelihoods(answer: Answer, prior: Beliefs, estimates: Estimates): readonly number[] {
  const columns = COLUMNS.get(estimates) ?? new Map<string, readonly number[]>();
  COLUMNS.set(estimates, columns);
  const key = `${answer.question} ${answer.said}`;
  const column = columns.get(key) ?? prior.map((hypothesis) => likelihood(answer, hypothesis, estimates));
  columns.set(key, column);
  return column;
}

/** P(this answer is recorded | this hypothesis); 1 where the answer tells nothing. */
export function likelihood(
  { question, said }: Answer,
  hypothesis: Hypothesis,
  estimates: Estimates = SEED_ESTIMATES,
): number {
  const [kind, ...rest] = question.split('.');
  switch (kind) {
    case 'symptom':
      return symptomLikelihood(said, hypothesis.family);
    case 'evidence':
      return evidenceLikelihood(rest[0] as EvidenceId, said, hypothesis.family, estimates);
    case 'check':
      return checkLikelihood(rest, said, hypothesis);
    case 'repair':
      return repairLikelihood(rest, said, hypothesis);
    default:
      throw new Error(`No question is called ${question}.`);
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

/** P(this answer to the check | this cause of the check's family), nobody being mistaken. */
export function answerProbability(check: Check, said: Answer['said'], cause: string): number {
  const answer = check.answers.find(({ meaning }) => meaning === said);
  return answer ? (answer.given[cause] ?? answer.otherwise) : 1;
}

/** How well people name a symptom holds their mistakes already. */
function symptomLikelihood(said: Answer['said'], family: FamilyId): number {
  const named = FAMILIES.find(({ symptom }) => symptom === said);
  if (!named) return 1;
  return named.id === family ? SYMPTOM_NAMED_RIGHTLY : (1 - SYMPTOM_NAMED_RIGHTLY) / (FAMILY_IDS.length - 1);
}

function evidenceLikelihood(
  id: EvidenceId,
  said: Answer['said'],
  family: FamilyId,
  { evidence }: Estimates,
): number {
  const given = evidence[id][evidenceAnswerIndex(id, said)];
  return given ? asRecorded(given[family], evidenceAnswers(id).length) : 1;
}

function checkLikelihood(
  [family, id]: readonly string[],
  said: Answer['said'],
  hypothesis: Hypothesis,
): number {
  const check = familyById(family as FamilyId).checks[id ?? ''];
  if (!check?.answers.some(({ meaning }) => meaning === said)) return 1;
  const cause = hypothesis.family === family ? hypothesis.cause : SOMETHING_ELSE;
  return asRecorded(answerProbability(check, said, cause), check.answers.length);
}

/** A repair tells something only where ties were counted after it and one was missed. */
function repairLikelihood(
  [family, cause]: readonly string[],
  said: Answer['said'],
  hypothesis: Hypothesis,
): number {
  const putRight = family === hypothesis.family && cause === hypothesis.cause;
  return said === 'tie.missed' && putRight ? REMEDY_FAILS : 1;
}

/** P(an answer is recorded), where now and then another than the true one is, any other as likely as the next. */
function asRecorded(truly: number, answers: number): number {
  return (1 - MISTAKEN_ANSWERS) * truly + (MISTAKEN_ANSWERS * (1 - truly)) / (answers - 1);
}
