import { familyById } from '../families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import { type Answer, checkQuestion, evidenceQuestion, type QuestionId, repairQuestion } from './answer.ts';
import {
  answerProbability,
  type Belief,
  type Beliefs,
  beliefsAfter,
  familyProbability,
  leadingFamily,
} from './beliefs.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from './evidence.ts';
import { informationGainBits } from './information.ts';
import { bestOrder, type Inspection } from './inspection-order.ts';

/** What the dialogue does next. */
export type NextStep =
  | { readonly kind: 'open' }
  | { readonly kind: 'evidence'; readonly question: EvidenceId; readonly gainBits: number }
  | {
      readonly kind: 'check';
      readonly family: FamilyId;
      readonly check: string;
      /** P(this check points at a fault), for the answer to "why that one?". */
      readonly chanceOfFinding: number;
      readonly minutes: number;
    }
  | { readonly kind: 'name'; readonly family: FamilyId; readonly cause: string; readonly probability: number }
  | { readonly kind: 'handOver'; readonly reason: HandOverReason };

export type HandOverReason = 'nothingLeftToCheck' | 'somethingElseLeads' | 'referred' | 'asked';

/** Minutes for the whole lockout, paid once. Expert estimate. */
export const LOCKOUT_MINUTES = 8;

/** Family probability above which no further evidence question is worth its seconds. Expert estimate. */
const FAMILY_CLEAR = 0.85;
/** Information below which an evidence question is not worth asking, in bits. Expert estimate. */
const LEAST_GAIN_BITS = 0.08;
/** A cause this probable is named. Expert estimate. */
const CAUSE_CLEAR = 0.7;
/** With every check done, a cause this probable is still worth putting right before handing over. Expert estimate. */
const CAUSE_WORTH_TRYING = 0.4;

/**
 * Decides from the recorded answers alone, so the same answers lead to the same step whatever their order.
 * @param lockoutLive whether hands-on checks cost no set-up now
 */
export function nextStep(answers: readonly Answer[], lockoutLive: boolean): NextStep {
  const asked = new Set<QuestionId>(answers.map(({ question }) => question));
  if (!asked.has('symptom')) return { kind: 'open' };

  const beliefs = beliefsAfter(answers);
  return (
    namedCause(beliefs, asked, CAUSE_CLEAR) ??
    bestEvidence(beliefs, asked) ??
    alwaysAsked(beliefs, asked) ??
    bestCheck(beliefs, asked, lockoutLive) ??
    namedCause(beliefs, asked, CAUSE_WORTH_TRYING) ?? { kind: 'handOver', reason: reasonToHandOver(beliefs) }
  );
}

/** What an evidence question is expected to tell about the families, in bits. */
export function expectedGainBits(beliefs: Beliefs, { answers }: EvidenceQuestion): number {
  return informationGainBits(
    FAMILY_IDS.map((id) => familyProbability(beliefs, id)),
    answers.map(({ given }) => FAMILY_IDS.map((id) => given[id])),
  );
}

function namedCause(beliefs: Beliefs, asked: ReadonlySet<QuestionId>, atLeast: number): NextStep | undefined {
  const leader = beliefs.reduce((best, belief) => (belief.probability > best.probability ? belief : best));
  const { family, cause, probability } = leader;
  if (cause === SOMETHING_ELSE || probability < atLeast || asked.has(repairQuestion(family, cause)))
    return undefined;
  return { kind: 'name', family, cause, probability };
}

function bestEvidence(beliefs: Beliefs, asked: ReadonlySet<QuestionId>): NextStep | undefined {
  if (familyProbability(beliefs, leadingFamily(beliefs)) > FAMILY_CLEAR) return undefined;
  const open = (Object.keys(EVIDENCE) as EvidenceId[])
    .filter((id) => !asked.has(evidenceQuestion(id)))
    .map((question) => ({ question, gainBits: expectedGainBits(beliefs, EVIDENCE[question]) }))
    .filter(({ gainBits }) => gainBits >= LEAST_GAIN_BITS)
    .sort((a, b) => b.gainBits / EVIDENCE[b.question].seconds - a.gainBits / EVIDENCE[a.question].seconds);
  return open[0] && { kind: 'evidence', ...open[0] };
}

/**
 * Asked before the first check whatever the beliefs: the string is the best witness and the opening words may be
 * wrong, and every check is made at one knotter.
 */
const ALWAYS_ASKED: readonly EvidenceId[] = ['knotPlace', 'whichKnotter'];

function alwaysAsked(beliefs: Beliefs, asked: ReadonlySet<QuestionId>): NextStep | undefined {
  const question = ALWAYS_ASKED.find((id) => !asked.has(evidenceQuestion(id)));
  return question && { kind: 'evidence', question, gainBits: expectedGainBits(beliefs, EVIDENCE[question]) };
}

function bestCheck(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  lockoutLive: boolean,
): NextStep | undefined {
  const family = familyById(leadingFamily(beliefs));
  const causes = beliefs.filter((belief) => belief.family === family.id);
  const open = Object.entries(family.checks).filter(([id]) => !asked.has(checkQuestion(family.id, id)));
  if (open.length === 0 || somethingElseLeads(causes)) return undefined;

  const inspections = open.map(([id, check]) => asInspection(id, check, causes));
  const { order } = bestOrder(
    causes.map(({ probability }) => probability),
    inspections,
    lockoutLive ? 0 : LOCKOUT_MINUTES,
  );
  const chosen = inspections.find(({ id }) => id === order[0]);
  return (
    chosen && {
      kind: 'check',
      family: family.id,
      check: chosen.id,
      chanceOfFinding: chanceOfFinding(chosen, causes),
      minutes: chosen.minutes,
    }
  );
}

function asInspection(id: string, check: Check, causes: Beliefs): Inspection {
  const passing = check.answers.filter(({ pointsAtFault }) => !pointsAtFault);
  return {
    id,
    minutes: check.minutes,
    needsLockout: check.reach !== 'safeStop',
    passes: causes.map(({ cause }) =>
      passing.reduce((p, { meaning }) => p + answerProbability(check, meaning, cause), 0),
    ),
  };
}

function chanceOfFinding({ passes }: Inspection, causes: Beliefs): number {
  const total = causes.reduce((sum, { probability }) => sum + probability, 0);
  return (
    causes.reduce((sum, { probability }, index) => sum + probability * (1 - (passes[index] ?? 1)), 0) / total
  );
}

function somethingElseLeads(causes: readonly Belief[]): boolean {
  const total = causes.reduce((sum, { probability }) => sum + probability, 0);
  return causes.some(({ cause, probability }) => cause === SOMETHING_ELSE && probability > total / 2);
}

function reasonToHandOver(beliefs: Beliefs): HandOverReason {
  const family = leadingFamily(beliefs);
  return somethingElseLeads(beliefs.filter((belief) => belief.family === family))
    ? 'somethingElseLeads'
    : 'nothingLeftToCheck';
}
