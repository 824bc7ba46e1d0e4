import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Measurement, MissCount } from '../../grammar/measurements.ts';
import { answerProbability } from '../diagnosis/beliefs.ts';
import {
  EVIDENCE,
  type EvidenceId,
  type EvidenceQuestion,
  SYMPTOM_NAMED_RIGHTLY,
} from '../diagnosis/evidence.ts';
import { findingOf as answerFor } from '../diagnosis/measured.ts';
import { questionOfState } from '../diagnosis/question-of-state.ts';
import { FAMILIES, familyById } from '../families/all.ts';
import { type Check, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import type { JobContext } from '../job-context.ts';
import type { DrillSetup, HiddenFault } from './hidden-fault.ts';
import { drawn, itemAt } from './seeded.ts';

/** What the machine of a drill shows to whoever looks, and what should be answered to it. */
export type Finding =
  | { readonly kind: 'told' | 'seen' | 'tie'; readonly meaning: MeaningId }
  | { readonly kind: 'measured'; readonly meaning: MeaningId; readonly measurement: Measurement }
  | { readonly kind: 'counted'; readonly missCount: MissCount };

/**
 * What is found where a state of the job asks, or undefined where nothing is to be found. The same question finds the
 * same whenever it is asked, until the fault is put right.
 */
export function findingFor(
  setup: DrillSetup,
  hidden: HiddenFault,
  state: string,
  context: Pick<JobContext, 'repairs' | 'proof'>,
): Finding | undefined {
  if (state === 'job.inquiry.opening') return { kind: 'told', meaning: symptomTold(setup, hidden) };
  if (state === 'job.inquiry.proving.askingRate') return { kind: 'counted', missCount: hidden.missed };
  if (state.startsWith('job.inquiry.proving.running')) return tie(setup, hidden, context);
  const question = questionOfState(state);
  if (!question || state.endsWith('accepting')) return undefined;
  return findingOf(setup, hidden, question);
}

/** What an evidence question or a check finds. */
export function findingOf(setup: DrillSetup, hidden: HiddenFault, question: string): Finding | undefined {
  const [kind, first = '', second = ''] = question.split('.');
  if (kind === 'evidence') return evidenceSeen(setup, hidden, first as EvidenceId);
  const check = familyById(first as FamilyId).checks[second];
  if (!check) return undefined;
  const cause = first === hidden.family ? hidden.cause : SOMETHING_ELSE;
  const meaning = itemAt(
    check.answers.map((answer) => [answer.meaning, answerProbability(check, answer.meaning, cause)] as const),
    drawn(setup.seed, question),
  );
  const measurement = setup.level === 2 ? measurementFor(check, meaning) : undefined;
  return measurement ? { kind: 'measured', meaning, measurement } : { kind: 'seen', meaning };
}

/** People name what they see; at the second level not always rightly. */
function symptomTold({ seed, level }: DrillSetup, { family }: HiddenFault): MeaningId {
  if (level === 1) return familyById(family).symptom;
  const others = (1 - SYMPTOM_NAMED_RIGHTLY) / (FAMILIES.length - 1);
  return itemAt(
    FAMILIES.map(({ id, symptom }) => [symptom, id === family ? SYMPTOM_NAMED_RIGHTLY : others] as const),
    drawn(seed, 'symptom'),
  );
}

function evidenceSeen({ seed }: DrillSetup, { family, side }: HiddenFault, id: EvidenceId): Finding {
  const { answers }: EvidenceQuestion = EVIDENCE[id];
  const { meanings } = itemAt(
    answers.map((answer) => [answer, answer.given[family]] as const),
    drawn(seed, `evidence ${id}`),
  );
  const sided = meanings.find((meaning) => meaning === `which.${side}`);
  return { kind: 'seen', meaning: sided ?? meanings[0] ?? 'notSure' };
}

/** Every tie is good once the fault is put right; before that it misses as often as it did, and once at the latest. */
function tie(
  { seed }: DrillSetup,
  { family, cause, missed }: HiddenFault,
  { repairs, proof }: Pick<JobContext, 'repairs' | 'proof'>,
): Finding {
  const isPutRight = repairs.some((repair) => repair.family === family && repair.cause === cause);
  if (isPutRight) return { kind: 'tie', meaning: 'tie.good' };
  const clean = proof?.clean ?? 0;
  const isLast = clean + 1 >= (proof?.needed ?? 1);
  const misses = drawn(seed, `tie ${repairs.length} ${clean}`) < missed.misses / missed.bales;
  return { kind: 'tie', meaning: misses || isLast ? 'tie.missed' : 'tie.good' };
}

/** A number in the middle of the band that means the answer, where the check is measured and has such a band. */
function measurementFor({ measure }: Check, meaning: MeaningId): Measurement | undefined {
  if (!measure) return undefined;
  const at = measure.bands.findIndex(({ means }) => means === meaning);
  if (at < 0) return undefined;
  const low = measure.bands[at - 1]?.below ?? measure.plausible.low;
  const high = measure.bands[at]?.below ?? measure.plausible.high;
  if (low.unit !== high.unit) return undefined;
  const middle = { amount: asRead((low.amount + high.amount) / 2), unit: low.unit };
  // Rounding may leave a narrow band; then the finding is told in words.
  return answerFor(middle, measure) === meaning ? middle : undefined;
}

/** As a rule or a scale is read: in whole numbers from five up, else in sixteenths. */
function asRead(amount: number): number {
  return amount >= 5 ? Math.round(amount) : Math.round(amount * 16) / 16;
}
