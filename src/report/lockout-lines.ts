import { isHeard, isSystemVoid, type JobEvent } from '../../flows/heard.ts';
import {
  HAND_TURN_STEPS,
  LOCKOUT_STEPS,
  type ProcedureStep,
  READY_STEPS,
  RELEASE_STEPS,
  SAFE_STOP_STEPS,
} from '../../flows/lockout/steps.ts';
import { safetyOf } from '../../flows/prompt.ts';
import { SYSTEM_VOID_LINES } from '../../flows/sayings.ts';
import { riskOf, ruleOf } from '../../grammar/lexicon.ts';
import type { RetracedStep } from '../records/replay.ts';
import { REACHED } from './advice.ts';
import type { LockoutLine } from './card.ts';

const STEPS: readonly ProcedureStep[] = [
  ...SAFE_STOP_STEPS,
  ...LOCKOUT_STEPS,
  ...HAND_TURN_STEPS,
  ...READY_STEPS,
  ...RELEASE_STEPS,
];

/** The lockout log of a job: every confirmed step, every state it led to, every void with its reason. */
export function lockoutLines(steps: readonly RetracedStep[]): readonly LockoutLine[] {
  return steps.flatMap(linesOf);
}

function linesOf({ entry: { atMs }, event, before, after }: RetracedStep): readonly LockoutLine[] {
  if (!before.can(event)) return [];
  const { notices } = after.context;
  if (notices.some(({ kind }) => kind === 'voided')) {
    return [{ kind: 'voided', atMs, text: reasonOf(event) }];
  }
  const lines: LockoutLine[] = [];
  if (isHeard(event) && riskOf(event.type) === 'confirm') {
    const text = reasonOf(event);
    const answersTo = STEPS.find(({ confirmedBy }) => confirmedBy === event.type)?.answersTo ?? [];
    const by = event.channel.by === 'voice' ? 'voice' : 'button';
    const isTaken = !notices.some(({ kind }) => kind === 'sayItClearer' || kind === 'confirmByButton');
    lines.push(isTaken ? { kind: 'confirmed', atMs, text, answersTo, by } : { kind: 'notTaken', atMs, text });
  }
  const state = safetyOf(after);
  if (state !== safetyOf(before)) lines.push({ kind: 'reached', atMs, state, text: REACHED[state] });
  return lines;
}

function reasonOf(event: JobEvent): string {
  if (isSystemVoid(event)) return SYSTEM_VOID_LINES[event.type];
  return isHeard(event) ? ruleOf(event.type).readBack : '';
}
