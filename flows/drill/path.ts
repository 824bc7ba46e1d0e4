import { type MeaningId, riskOf } from '../../grammar/lexicon.ts';
import { type Answer, checkQuestion, evidenceQuestion, repairQuestion } from '../diagnosis/answer.ts';
import type { Hypothesis } from '../diagnosis/beliefs.ts';
import { HAND_TURN_MINUTES, LOCKOUT_MINUTES, PROOF_MINUTES } from '../diagnosis/costs.ts';
import { EVIDENCE, type EvidenceId } from '../diagnosis/evidence.ts';
import { nextStep } from '../diagnosis/next-step.ts';
import { questionOfState } from '../diagnosis/question-of-state.ts';
import { familyById } from '../families/all.ts';
import type { FamilyId } from '../families/family.ts';
import type { Repair } from '../job-context.ts';
import type { DrillEntry } from './drill.ts';
import { type Finding, findingOf, type PlayedMachine } from './finding.ts';
import { type HiddenFault, isHidden, isPutRight } from './hidden-fault.ts';

/** One thing done on the way to the fault, with what it cost. */
export interface PathStep {
  readonly kind: 'evidence' | 'check' | 'lockout' | 'repairInVain';
  /** The question that was asked, or the repair that was made; empty for the lockout. */
  readonly of: string;
  readonly said?: MeaningId;
  /** By the estimates of the tables, not by the clock. */
  readonly minutes: number;
}

export interface Path {
  readonly steps: readonly PathStep[];
  readonly minutes: number;
  /** All that was hidden put right; or named to the dealer, who alone mends it; or handed over without being found. */
  readonly end: 'putRight' | 'referred' | 'handedOver';
}

/** More than any dialogue needs: a search that reaches it is going round. */
const MOST_STEPS = 200;

/**
 * The way of the job's own policy to the same hidden fault, every answer given as the machine shows it. What a trainee's
 * way is held against: both are charged by the same estimates.
 */
export function policyPath(machine: PlayedMachine, symptom: MeaningId): Path {
  const { hidden } = machine;
  const repaired: Hypothesis[] = [];
  const answers: Answer[] = [{ question: 'symptom', said: symptom }];
  const steps: PathStep[] = [];
  let isCharged = false;
  let isLive = false;
  const lockOut = () => {
    if (!isCharged) steps.push({ kind: 'lockout', of: '', minutes: LOCKOUT_MINUTES });
    isCharged = true;
    isLive = true;
  };
  const ended = (end: Path['end']): Path => ({ steps, minutes: total(steps), end });
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const step = nextStep(answers, isLive);
    switch (step.kind) {
      case 'open':
        throw new Error('The dialogue opens twice.');
      case 'handOver':
        return ended('handedOver');
      case 'evidence':
      case 'check': {
        const question =
          step.kind === 'evidence' ? evidenceQuestion(step.question) : checkQuestion(step.family, step.check);
        const said = answerTo(findingOf(machine, question, repaired));
        if (step.kind === 'check' && reachOf(step.family, step.check) !== 'safeStop') lockOut();
        // After a cycle turned by hand the lockout is built again.
        if (step.kind === 'check' && reachOf(step.family, step.check) === 'handTurn') isLive = false;
        answers.push({ question, said });
        steps.push({ kind: step.kind, of: question, said, minutes: minutesOf(question) });
        break;
      }
      case 'name': {
        const { family, cause } = step;
        const remedy = familyById(family).causes[cause]?.remedy;
        const isRight = isHidden(hidden, { family, cause });
        if (remedy?.refer) return ended(isRight ? 'referred' : 'handedOver');
        if (remedy?.reach === 'lockout') lockOut();
        repaired.push({ family, cause });
        if (isPutRight(hidden, repaired)) return ended('putRight');
        const of = repairQuestion(family, cause);
        if (!isRight)
          steps.push({ kind: 'repairInVain', of, minutes: (remedy?.minutes ?? 0) + PROOF_MINUTES });
        answers.push({ question: of, said: 'tie.missed' });
        // Ties are counted under power.
        isLive = false;
        break;
      }
    }
  }
  throw new Error('The dialogue goes round.');
}

/**
 * The trainee's way, charged like the policy's. The lockout is charged once, and once more for each that was given up
 * with nothing to give it up for.
 */
export function traineePath(
  entries: readonly DrillEntry[],
  hidden: HiddenFault,
  repairs: readonly Repair[],
  end: Path['end'],
): Path {
  const steps: PathStep[] = [];
  let needsCharge = true;
  entries.forEach((entry, at) => {
    if (entry.kind !== 'said') return;
    const { state, meaning, safetyBefore, safetyAfter } = entry;
    if (safetyBefore !== 'lockedOut' && safetyAfter === 'lockedOut' && needsCharge) {
      steps.push({ kind: 'lockout', of: '', minutes: LOCKOUT_MINUTES });
      needsCharge = false;
    }
    // The void that answers a hazard is followed by the note that it was noticed.
    const isNeedless = entries[at + 1]?.kind !== 'noticed';
    const isVoid = riskOf(meaning) === 'void';
    if (safetyBefore === 'lockedOut' && isVoid && isNeedless) needsCharge = true;
    const question = questionOfState(state);
    if (!question || state.endsWith('Prepared.admitted') || meaning === 'goBack' || isVoid) return;
    const isReadBack = state.endsWith('accepting') || meaning === 'value.measured';
    if (isReadBack && meaning !== 'yes') return;
    const kind = question.startsWith('evidence.') ? 'evidence' : 'check';
    steps.push({ kind, of: question, said: meaning, minutes: minutesOf(question) });
  });
  for (const { family, cause, outcome } of repairs) {
    if (isHidden(hidden, { family, cause })) continue;
    const minutes = familyById(family).causes[cause]?.remedy.minutes ?? 0;
    const proof = outcome === 'stillMisses' ? PROOF_MINUTES : 0;
    steps.push({ kind: 'repairInVain', of: repairQuestion(family, cause), minutes: minutes + proof });
  }
  return { steps, minutes: total(steps), end };
}

/** The answer a finding calls for. */
export function answerTo(finding: Finding | undefined): MeaningId {
  return finding && 'meaning' in finding ? finding.meaning : 'notSure';
}

function minutesOf(question: string): number {
  const [kind, first = '', second = ''] = question.split('.');
  if (kind === 'evidence') return EVIDENCE[first as EvidenceId].seconds / 60;
  const check = familyById(first as FamilyId).checks[second];
  return (check?.minutes ?? 0) + (check?.reach === 'handTurn' ? HAND_TURN_MINUTES : 0);
}

function reachOf(family: FamilyId, check: string) {
  return familyById(family).checks[check]?.reach ?? 'lockout';
}

function total(steps: readonly PathStep[]): number {
  return steps.reduce((sum, { minutes }) => sum + minutes, 0);
}
