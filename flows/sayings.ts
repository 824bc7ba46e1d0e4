import { ruleOf } from '../grammar/lexicon.ts';
import type { Measurement } from '../grammar/measurements.ts';
import {
  type Precision,
  type Say,
  sayBand,
  sayDigits,
  sayMeasure,
  sayOutOf,
  sayWhole,
} from '../grammar/say.ts';
import { excluded } from './diagnosis/excluded.ts';
import { familyById } from './families/all.ts';
import type { FamilyId } from './families/family.ts';
import { upperBoundAfterClean } from './figures/clean-ties.ts';
import { SYSTEM_VOIDS, type SystemVoid } from './heard.ts';
import type { JobContext, Notice } from './job-context.ts';
import { PROOF_CONFIDENCE, rideAlong } from './job-setup.ts';
import { LINES } from './lines.ts';

/** What the tablet noticed, spoken after "lockout is off". */
export const SYSTEM_VOID_LINES: Readonly<Record<SystemVoid, string>> = {
  'void.restarted': 'The tablet was started again.',
  'void.slept': 'The tablet was asleep, or showed something else.',
  'void.clockJumped': 'The clock of the tablet jumped, or it was asleep.',
  'void.leftIdle': 'Nothing was said for fifteen minutes.',
  'void.handedRound': 'Somebody else has the tablet.',
};

/** "It looks like ...", said when a family takes the lead. */
export function looksLikeLine(family: FamilyId): string {
  return `It looks like ${familyById(family)?.name}.`;
}

/** "The likely cause: ...", said when a cause is named. */
export function causeLine(family: FamilyId, cause: string): string {
  return `The likely cause: ${familyById(family)?.causes[cause]?.name}.`;
}

/** What is said of the last event before the next question. */
export function sayNotice(notice: Notice): Say {
  switch (notice.kind) {
    case 'heard':
      return [ruleOf(notice.meaning).readBack].filter((line) => line !== '');
    case 'voided':
      return [
        LINES.voided,
        isSystemVoid(notice.by) ? SYSTEM_VOID_LINES[notice.by] : ruleOf(notice.by).readBack,
      ];
    case 'implausible':
      return [LINES.implausible, ...saySpan(notice), LINES.sayItAgain];
    case 'looksLike':
      return [looksLikeLine(notice.family)];
    case 'sayItClearer':
    case 'confirmByButton':
    case 'noMissesBefore':
    case 'safeStopReached':
    case 'lockoutLive':
    case 'repairFailed':
    case 'nothingToGoBackTo':
      return [LINES[notice.kind]];
  }
}

/** From the least to the most that is taken. */
export function saySpan({ low, high }: { readonly low: Measurement; readonly high: Measurement }): Say {
  return sayBand(low.amount, high.amount, high.unit, precisionFor(high.unit, [low.amount, high.amount]));
}

/** A value read back for acceptance. */
export function sayPending({ pending }: JobContext): Say {
  if (!pending) return [LINES.acceptValue];
  switch (pending.kind) {
    case 'measurement':
      return [
        ...sayMeasurement(pending.measurement),
        ...sayDigitsWhereMisheard(pending.measurement.amount),
        LINES.acceptValue,
      ];
    case 'missCount':
    case 'ties':
      return [...sayOutOf(pending.missCount.misses, pending.missCount.bales, 'bale'), LINES.acceptValue];
  }
}

/** Thirteen and thirty sound alike, "one three" and "three zero" do not: the digits are said too where it matters. */
function sayDigitsWhereMisheard(amount: number): Say {
  const isTeen = amount >= 13 && amount <= 19;
  const isTen = amount >= 30 && amount <= 90 && amount % 10 === 0;
  return Number.isInteger(amount) && (isTeen || isTen) ? sayDigits(amount) : [];
}

/** A measurement as it is read back, to the thirty-second where it is a fraction of an inch. */
export function sayMeasurement({ amount, unit }: Measurement): Say {
  return sayMeasure(amount, unit, precisionFor(unit, [amount]));
}

/** Whole where the amounts are, else the marks of a rule or the parts of a turn, else two decimals. */
function precisionFor(unit: Measurement['unit'], amounts: readonly number[]): Precision {
  if (amounts.every(Number.isInteger)) return { decimals: 0 };
  const isInParts = unit === 'inch' || unit === 'turn' || unit === 'foot';
  return isInParts && amounts.every((amount) => Number.isInteger(amount * 32))
    ? { finestPart: 32 }
    : { decimals: 2 };
}

/** The cause that was named, how sure, and the first step of its remedy. */
export function sayRemedyStep(context: JobContext): Say {
  const { next, remedyStep } = context;
  if (next.kind !== 'name') return [];
  const step = familyById(next.family)?.causes[next.cause]?.remedy.steps[remedyStep] ?? '';
  return remedyStep > 0 ? [step] : [...sayRemedyWhy(context), step];
}

/** Why the remedy is proposed: what it costs to try, and how sure the cause is. */
export function sayRemedyWhy({ next }: JobContext): Say {
  if (next.kind !== 'name') return [];
  return [
    causeLine(next.family, next.cause),
    LINES.iAm,
    ...sayMeasure(percent(next.probability), 'percent'),
    LINES.sure,
  ];
}

/** What is offered to be put right in the same visit. */
export function sayAlongside(context: JobContext): Say {
  const along = rideAlong(context);
  return [LINES.alongside, ...(along ? [causeLine(along.family, along.cause)] : []), LINES.alongsideAsk];
}

/** Why the job is handed over; where a cause was named, that and its own reason. */
export function sayHandOver(context: JobContext): Say {
  const ruledOut = excluded(context.answers).length;
  return [...sayHandOverReason(context), ...(ruledOut > 0 ? [LINES.excluded, ...sayWhole(ruledOut)] : [])];
}

/** Why the job is handed over, without what was excluded. */
export function sayHandOverReason({ next, handOver }: JobContext): Say {
  if (!handOver) return [];
  switch (handOver) {
    case 'referred': {
      if (next.kind !== 'name') return [LINES.referred];
      const refer = familyById(next.family)?.causes[next.cause]?.remedy.refer;
      return [causeLine(next.family, next.cause), refer ?? LINES.referred];
    }
    case 'nothingLeftToCheck':
    case 'somethingElseLeads':
    case 'asked':
      return [LINES[handOver]];
  }
}

/** How many clean ties in a row the proof takes. */
export function sayProofPlan({ proof }: JobContext): Say {
  return proof
    ? [LINES.proofNeeds, ...sayWhole(proof.needed), LINES.proofInARow, LINES.proofNotCounting]
    : [];
}

/** The count so far. */
export function sayCount({ proof }: JobContext): Say {
  if (!proof) return [];
  if (proof.clean === 0) return [LINES.count];
  return [...sayWhole(proof.clean), LINES.countOf, ...sayWhole(proof.needed)];
}

/** What the clean run proves, with its number: an exact one-sided bound, said as "one bale in so many". */
export function sayClaim({ proof }: JobContext): Say {
  if (!proof) return [];
  const oneIn = Math.floor(1 / upperBoundAfterClean(proof.clean, PROOF_CONFIDENCE));
  return [LINES.proofClean, ...sayWhole(proof.clean), LINES.proofClaim, ...sayWhole(oneIn), LINES.closeJob];
}

function percent(probability: number): number {
  return Math.min(99, Math.round(probability * 100));
}

function isSystemVoid(by: string): by is SystemVoid {
  return (SYSTEM_VOIDS as readonly string[]).includes(by);
}
