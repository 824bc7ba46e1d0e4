import { familyById } from '../families/all.ts';
import { FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import { type Answer, evidenceQuestion, type QuestionId } from './answer.ts';
import { type Belief, type Beliefs, beliefsAfter, familyProbability, leadingFamily } from './beliefs.ts';
import { type Estimates, EVIDENCE_IDS, SEED_ESTIMATES } from './estimates.ts';
import { EVIDENCE, type EvidenceId } from './evidence.ts';
import { informationGainBits } from './information.ts';
import {
  bestCheck,
  bestRepair,
  type CheckTrial,
  chanceByMinute,
  isWorthDoing,
  likeliest,
  openCauses,
} from './search.ts';

/** What the dialogue does next. */
export type NextStep =
  | { readonly kind: 'open' }
  | { readonly kind: 'evidence'; readonly question: EvidenceId; readonly gainBits: number }
  | {
      readonly kind: 'check';
      readonly family: FamilyId;
      readonly check: string;
      /** P(this check finds the fault), among all explanations, for the answer to "why that one?". */
      readonly chanceOfFinding: number;
      /** What it costs, with the lockout where that is not live. */
      readonly minutes: number;
    }
  | { readonly kind: 'name'; readonly family: FamilyId; readonly cause: string; readonly probability: number }
  | { readonly kind: 'handOver'; readonly reason: HandOverReason };

export type HandOverReason = 'nothingLeftToCheck' | 'somethingElseLeads' | 'referred' | 'asked';

/** Family probability above which no further evidence question is worth its seconds. Expert estimate. */
const FAMILY_CLEAR = 0.85;
/** Information below which an evidence question is not worth asking, in bits. Expert estimate. */
const LEAST_GAIN_BITS = 0.08;
/** A cause this probable, more than everything else together, is named without another look. */
const CAUSE_CLEAR = 0.5;
/** A cause that ends the job with the dealer has to be clearer. Expert estimate. */
const DEALER_CAUSE_CLEAR = 0.8;
/** Probability of struck needles from which they are looked at before anything else. Expert estimate. */
const NEEDLES_WORTH_A_LOOK = 0.08;
/** Probability of struck needles above which nobody is sent in for anything else. Expert estimate. */
const NEEDLES_LIKELY = 0.12;
/** A cause this probable is named to the dealer who will have to put it right. Expert estimate. */
const CAUSE_WORTH_TELLING = 0.25;

/**
 * Decides from the recorded answers alone, so the same answers lead to the same step whatever their order.
 *
 * A cause that is clear is named. Otherwise evidence is asked for while it tells the families apart; then comes
 * the check or the repair that buys the most chance by the minute, until nothing is worth its minutes any more.
 * @param lockoutLive whether hands-on checks cost no set-up now
 */
export function nextStep(
  answers: readonly Answer[],
  lockoutLive: boolean,
  estimates: Estimates = SEED_ESTIMATES,
): NextStep {
  const asked = new Set<QuestionId>(answers.map(({ question }) => question));
  if (!asked.has('symptom')) return { kind: 'open' };

  const beliefs = beliefsAfter(answers, estimates);
  return (
    clearCause(beliefs, asked) ??
    bestEvidence(beliefs, asked, estimates) ??
    alwaysAsked(beliefs, asked, estimates) ??
    needlesFirst(beliefs, asked, lockoutLive) ??
    bestTrial(beliefs, answers, lockoutLive) ??
    causeForTheDealer(beliefs, asked) ?? { kind: 'handOver', reason: reasonToHandOver(beliefs) }
  );
}

/** What an evidence question is expected to tell about the families, in bits. */
export function expectedGainBits(
  beliefs: Beliefs,
  question: EvidenceId,
  { evidence }: Estimates = SEED_ESTIMATES,
): number {
  return informationGainBits(
    FAMILY_IDS.map((id) => familyProbability(beliefs, id)),
    evidence[question].map((given) => FAMILY_IDS.map((id) => given[id])),
  );
}

function clearCause(beliefs: Beliefs, asked: ReadonlySet<QuestionId>): NextStep | undefined {
  const leader = likeliest(openCauses(beliefs, asked));
  if (!leader) return undefined;
  const atLeast = isForTheDealer(leader) ? DEALER_CAUSE_CLEAR : CAUSE_CLEAR;
  return leader.probability >= atLeast ? named(leader) : undefined;
}

function bestEvidence(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  estimates: Estimates,
): NextStep | undefined {
  if (familyProbability(beliefs, leadingFamily(beliefs)) > FAMILY_CLEAR) return undefined;
  const open = EVIDENCE_IDS.filter((id) => !asked.has(evidenceQuestion(id)))
    .map((question) => ({ question, gainBits: expectedGainBits(beliefs, question, estimates) }))
    .filter(({ gainBits }) => gainBits >= LEAST_GAIN_BITS)
    .sort((a, b) => b.gainBits / EVIDENCE[b.question].seconds - a.gainBits / EVIDENCE[a.question].seconds);
  return open[0] && { kind: 'evidence', ...open[0] };
}

/**
 * Asked before the first check whatever the beliefs: the string is the best witness and the opening words may be
 * wrong, every check is made at one knotter, and nobody goes near needles that were struck.
 */
const ALWAYS_ASKED: readonly EvidenceId[] = ['knotPlace', 'whichKnotter', 'needleSigns'];

function alwaysAsked(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  estimates: Estimates,
): NextStep | undefined {
  const question = ALWAYS_ASKED.find((id) => !asked.has(evidenceQuestion(id)));
  return question && { kind: 'evidence', question, gainBits: expectedGainBits(beliefs, question, estimates) };
}

/**
 * Needles out of step with the plunger can break the machine and whoever stands by it. While that may well be the
 * fault nobody is sent in for any other: it is looked at from outside, and if it stays likely, handed over.
 */
function needlesFirst(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  lockoutLive: boolean,
): NextStep | undefined {
  const probability = familyProbability(beliefs, 'needlesStruck');
  if (probability < NEEDLES_WORTH_A_LOOK) return undefined;
  const ofNeedles = beliefs.filter(({ family }) => family === 'needlesStruck');
  const look = bestCheck(ofNeedles, asked, lockoutLive, (question) => !asked.has(question));
  if (look) return checked(look);
  const leader = likeliest(openCauses(ofNeedles, asked));
  return leader && probability >= NEEDLES_LIKELY ? named(leader) : undefined;
}

/** A check or a repair, whichever buys more chance by the minute, where either is worth its minutes. */
function bestTrial(beliefs: Beliefs, answers: readonly Answer[], lockoutLive: boolean): NextStep | undefined {
  const asked = new Set<QuestionId>(answers.map(({ question }) => question));
  const check =
    worthwhile(bestCheck(beliefs, asked, lockoutLive, (question) => !asked.has(question))) ??
    worthwhile(bestCheck(beliefs, asked, lockoutLive, (question) => wasUnsureOnce(answers, question)));
  const repair = bestRepair(beliefs, asked, lockoutLive);
  return check && !(repair && chanceByMinute(repair) > chanceByMinute(check))
    ? checked(check)
    : repair && named(repair.cause);
}

function worthwhile(check: CheckTrial | undefined): CheckTrial | undefined {
  return check && isWorthDoing(check) ? check : undefined;
}

/** "Not sure" may be clearer on a second look, when the rest has been looked at; it is asked twice, not more. */
function wasUnsureOnce(answers: readonly Answer[], question: QuestionId): boolean {
  const given = answers.filter((answer) => answer.question === question);
  return given.length === 1 && given[0]?.said === 'notSure';
}

function causeForTheDealer(beliefs: Beliefs, asked: ReadonlySet<QuestionId>): NextStep | undefined {
  const leader = likeliest(openCauses(beliefs, asked));
  return leader && isForTheDealer(leader) && leader.probability >= CAUSE_WORTH_TELLING
    ? named(leader)
    : undefined;
}

function isForTheDealer({ family, cause }: Belief): boolean {
  return familyById(family).causes[cause]?.remedy.refer !== undefined;
}

function reasonToHandOver(beliefs: Beliefs): HandOverReason {
  return likeliest(beliefs)?.cause === SOMETHING_ELSE ? 'somethingElseLeads' : 'nothingLeftToCheck';
}

function checked({ family, check, chance, minutes }: CheckTrial): NextStep {
  return { kind: 'check', family, check, chanceOfFinding: chance, minutes };
}

function named({ family, cause, probability }: Belief): NextStep {
  return { kind: 'name', family, cause, probability };
}
