import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Measurement, MissCount } from '../../grammar/measurements.ts';
import { answerProbability, type Hypothesis } from '../diagnosis/beliefs.ts';
import {
  EVIDENCE,
  type EvidenceAnswer,
  type EvidenceId,
  type EvidenceQuestion,
} from '../diagnosis/evidence.ts';
import { findingOf as answerFor } from '../diagnosis/measured.ts';
import { questionOfState } from '../diagnosis/question-of-state.ts';
import { FAMILIES, familyById } from '../families/all.ts';
import { type Check, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import type { JobContext } from '../job-context.ts';
import { type DrillSetup, type HiddenFault, isAmong, isPutRight } from './hidden-fault.ts';
import { LEVELS } from './levels.ts';
import { drawn, itemAt } from './seeded.ts';

/** What the machine of a drill shows to whoever looks, and what should be answered to it. */
export type Finding =
  | { readonly kind: 'told' | 'seen' | 'tie'; readonly meaning: MeaningId }
  | { readonly kind: 'measured'; readonly meaning: MeaningId; readonly measurement: Measurement }
  | { readonly kind: 'counted'; readonly missCount: MissCount };

/** The machine of a drill: what is wrong with it, and the draw of everything that is found on it. */
export interface PlayedMachine {
  readonly setup: DrillSetup;
  readonly hidden: HiddenFault;
  /** A whole number that the findings are drawn by. */
  readonly dealtBy: number;
}

/**
 * What is found where a state of the job asks, or undefined where nothing is to be found. The same question finds the
 * same whenever it is asked, until the fault is put right.
 */
export function findingFor(
  machine: PlayedMachine,
  state: string,
  context: Pick<JobContext, 'repairs' | 'proof'>,
): Finding | undefined {
  if (state === 'job.inquiry.opening') return { kind: 'told', meaning: symptomTold(machine) };
  if (state === 'job.inquiry.proving.askingRate')
    return { kind: 'counted', missCount: machine.hidden.missed };
  if (state.startsWith('job.inquiry.proving.running')) return tie(machine, context);
  const question = questionOfState(state);
  if (!question || state.endsWith('accepting')) return undefined;
  return findingOf(machine, question, context.repairs);
}

/** What an evidence question or a check finds. */
export function findingOf(
  machine: PlayedMachine,
  question: string,
  repairs: readonly Hypothesis[] = [],
): Finding | undefined {
  const [kind, first = '', second = ''] = question.split('.');
  if (kind === 'evidence') return evidenceSeen(machine, first as EvidenceId);
  const check = familyById(first as FamilyId).checks[second];
  if (!check) return undefined;
  const meaning = checkSeen(machine, first as FamilyId, question, check, repairs);
  const measurement =
    LEVELS[machine.setup.level].shows === 'words'
      ? undefined
      : measurementFor(machine, question, check, meaning);
  return measurement ? { kind: 'measured', meaning, measurement } : { kind: 'seen', meaning };
}

/** People name what they see, and not always rightly. */
export function symptomTold({ setup: { level }, hidden, dealtBy }: PlayedMachine): MeaningId {
  const [{ family }] = hidden.faults;
  const { namedRightly } = LEVELS[level];
  const others = (1 - namedRightly) / (FAMILIES.length - 1);
  return itemAt(
    FAMILIES.map(({ id, symptom }) => [symptom, id === family ? namedRightly : others] as const),
    drawn(dealtBy, 'symptom'),
  );
}

/** Evidence that may mislead: what a string or a memory shows. The knotter it is, and struck needles, are plain to see. */
const MAY_MISLEAD: readonly EvidenceId[] = ['knotPlace', 'nextBale', 'endLook', 'whenItMisses'];

function evidenceSeen({ setup: { level }, hidden, dealtBy }: PlayedMachine, id: EvidenceId): Finding {
  const { answers }: EvidenceQuestion = EVIDENCE[id];
  const [{ family }] = hidden.faults;
  const misleads =
    LEVELS[level].misleading > 0 &&
    id === MAY_MISLEAD[Math.floor(drawn(dealtBy, 'misleading') * MAY_MISLEAD.length)];
  const usual = answers.reduce((best, answer) => (answer.given[family] > best.given[family] ? answer : best));
  const { meanings } = itemAt(
    answers
      .filter((answer: EvidenceAnswer) => !(misleads && answer === usual))
      .map((answer) => [answer, answer.given[family]] as const),
    drawn(dealtBy, `evidence ${id}`),
  );
  const sided = meanings.find((meaning) => meaning === `which.${hidden.side}`);
  return { kind: 'seen', meaning: sided ?? meanings[0] ?? 'notSure' };
}

/** Drawn by the table for each fault that stands and that the check speaks of; what points at a fault is seen first. */
function checkSeen(
  { hidden, dealtBy }: PlayedMachine,
  family: FamilyId,
  question: string,
  check: Check,
  repairs: readonly Hypothesis[],
): MeaningId {
  const standing = hidden.faults
    .filter((fault) => fault.family === family && !isAmong(repairs, fault))
    .map(({ cause }) => cause);
  const spokenOf = standing.filter((cause) => check.answers.some(({ given }) => cause in given));
  const drawnFor = (cause: string) =>
    itemAt(
      check.answers.map((answer) => [answer, answerProbability(check, answer.meaning, cause)] as const),
      drawn(dealtBy, question),
    );
  const seen = (spokenOf.length > 0 ? spokenOf : [standing[0] ?? SOMETHING_ELSE]).map(drawnFor);
  const { meaning } = seen.find(({ pointsAtFault }) => pointsAtFault) ?? seen[0] ?? check.answers[0];
  return meaning;
}

/** Every tie is good once all is put right; before that it misses as often as it did, and once at the latest. */
function tie(
  { hidden, dealtBy }: PlayedMachine,
  { repairs, proof }: Pick<JobContext, 'repairs' | 'proof'>,
): Finding {
  if (isPutRight(hidden, repairs)) return { kind: 'tie', meaning: 'tie.good' };
  const { misses: missed, bales } = hidden.missed;
  const clean = proof?.clean ?? 0;
  const isLast = clean + 1 >= (proof?.needed ?? 1);
  const misses = drawn(dealtBy, `tie ${repairs.length} ${clean}`) < missed / bales;
  return { kind: 'tie', meaning: misses || isLast ? 'tie.missed' : 'tie.good' };
}

/**
 * A number that reads as the answer, where the check is measured and has such a band. A reading near a limit lies
 * within two marks of it.
 */
function measurementFor(
  { setup: { level }, dealtBy }: PlayedMachine,
  question: string,
  { measure }: Check,
  meaning: MeaningId,
): Measurement | undefined {
  if (!measure) return undefined;
  const at = measure.bands.findIndex(({ means }) => means === meaning);
  if (at < 0) return undefined;
  const lowLimit = measure.bands[at - 1]?.below;
  const highLimit = measure.bands[at]?.below;
  const low = lowLimit ?? measure.plausible.low;
  const high = highLimit ?? measure.plausible.high;
  if (low.unit !== high.unit) return undefined;
  const { unit } = low;
  const middle = asRead((low.amount + high.amount) / 2);
  const ofLimits = [
    ...(lowLimit ? [asRead(lowLimit.amount) + markAt(lowLimit.amount)] : []),
    ...(highLimit ? [asRead(highLimit.amount) - markAt(highLimit.amount)] : []),
  ];
  const near = ofLimits[Math.floor(drawn(dealtBy, `limit ${question}`) * ofLimits.length)];
  const wanted = LEVELS[level].readings === 'nearLimit' && near !== undefined ? [near, middle] : [middle];
  // Rounding may leave a narrow band; then the finding is told in words.
  return wanted
    .map((amount) => ({ amount, unit }))
    .find((reading) => answerFor(reading, measure) === meaning);
}

/** As a rule or a scale is read: in whole numbers from five up, else in sixteenths. */
function asRead(amount: number): number {
  const mark = markAt(amount);
  return Math.round(amount / mark) * mark;
}

/** The finest mark that is read. */
function markAt(amount: number): number {
  return amount >= 5 ? 1 : 1 / 16;
}
