import { riskOf } from '../../grammar/lexicon.ts';
import type { JobContext } from '../job-context.ts';
import { type DrillEntry, type DrillState, LATE_MS } from './drill.ts';
import { type HiddenFault, isHidden, isPutRight } from './hidden-fault.ts';
import { answerTo, type Path, policyPath, traineePath } from './path.ts';

/**
 * How a drill went, each part from 0 to 1. The weights are expert estimates.
 *
 * The job asks in its own order, so the order of the steps earns nothing here: what is scored is what the trainee
 * notices, reads, counts and finishes.
 */
export interface DrillScore {
  /** Ended at once by a fatal error; then the points are 0. */
  readonly fatal: boolean;
  readonly safety: number;
  readonly efficiency: number;
  readonly evidence: number;
  readonly verification: number;
  readonly record: number;
  /** 0 to 100. */
  readonly points: number;
  readonly passed: boolean;
  readonly trainee: Path;
  readonly policy: Path;
}

export const WEIGHTS = { safety: 0.3, efficiency: 0.35, evidence: 0.15, verification: 0.15, record: 0.05 };
/** Taken from the safety part for a hazard noticed late. */
const LATE_COSTS = 0.25;
const PASS_POINTS = 80;

type Parts = Pick<DrillScore, keyof typeof WEIGHTS>;

/** @param context the job of the drill as it ended */
export function scoreOf(drill: DrillState, context: JobContext): DrillScore {
  const { machine, entries } = drill;
  const symptom = context.answers.find(({ question }) => question === 'symptom')?.said ?? 'notSure';
  const policy = policyPath(machine, symptom);
  const end = endOf(machine.hidden, context);
  const trainee = traineePath(entries, machine.hidden, context.repairs, end);
  const endedRightly = end !== 'handedOver';
  const fatal = drill.over === 'fatal';
  const parts: Parts = {
    safety: fatal ? 0 : safetyOf(entries),
    // A search given up early is short, and not efficient.
    efficiency: endedRightly ? efficiency(policy.minutes, trainee.minutes) : 0,
    evidence: evidenceOf(entries),
    verification: verificationOf(drill, context, endedRightly),
    record: endedRightly ? 1 : 0,
  };
  const points = fatal ? 0 : pointsOf(parts);
  return {
    fatal,
    ...parts,
    points,
    passed: !fatal && points >= PASS_POINTS && parts.safety === 1,
    trainee,
    policy,
  };
}

/** 0 to 100. */
export function pointsOf(parts: Parts): number {
  const keys = Object.keys(WEIGHTS) as (keyof typeof WEIGHTS)[];
  return 100 * keys.reduce((sum, key) => sum + WEIGHTS[key] * parts[key], 0);
}

/** Minutes of the best way over minutes of the way taken, never more than one. */
export function efficiency(bestMinutes: number, takenMinutes: number): number {
  return takenMinutes > 0 ? Math.min(1, bestMinutes / takenMinutes) : 1;
}

function safetyOf(entries: readonly DrillEntry[]): number {
  const late = entries.filter((entry) => entry.kind === 'noticed' && entry.afterMs > LATE_MS).length;
  return Math.max(0, 1 - LATE_COSTS * late);
}

/** Bits that were read rightly, of the bits the questions could tell. */
function evidenceOf(entries: readonly DrillEntry[]): number {
  const asked = entries.flatMap((entry) =>
    entry.kind === 'said' && entry.gainBits !== undefined && riskOf(entry.meaning) !== 'void'
      ? [{ bits: entry.gainBits, isRight: entry.meaning === answerTo(entry.shown) }]
      : [],
  );
  const offered = asked.reduce((sum, { bits }) => sum + bits, 0);
  const got = asked.reduce((sum, { bits, isRight }) => sum + (isRight ? bits : 0), 0);
  return offered > 0 ? got / offered : 1;
}

/** Ties that were truly clean, of those the proof needs; a job that is rightly handed over has none to count. */
function verificationOf(drill: DrillState, { proof, handOver }: JobContext, endedRightly: boolean): number {
  if (!proof || handOver !== undefined) return endedRightly ? 1 : 0;
  const claimed = drill.entries.filter(
    (entry) =>
      entry.kind === 'said' && entry.meaning === 'tie.good' && answerTo(entry.shown) === 'tie.missed',
  ).length;
  return Math.min(1, Math.max(0, proof.clean - claimed) / proof.needed);
}

/** All that was hidden repaired and proved, or named to the dealer who alone mends it. */
function endOf(hidden: HiddenFault, { repairs, handOver, next }: JobContext): Path['end'] {
  if (isPutRight(hidden, repairs) && repairs.at(-1)?.outcome === 'proved') return 'putRight';
  const isNamed = next.kind === 'name' && isHidden(hidden, next);
  return handOver === 'referred' && isNamed ? 'referred' : 'handedOver';
}
