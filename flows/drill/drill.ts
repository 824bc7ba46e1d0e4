import { type MeaningId, riskOf } from '../../grammar/lexicon.ts';
import type { HeardEvent } from '../heard.ts';
import type { JobContext } from '../job-context.ts';
import type { Prompt } from '../prompt.ts';
import { dealtMachine } from './deal.ts';
import { type Finding, findingFor, type PlayedMachine } from './finding.ts';
import {
  type HazardId,
  INTERRUPTION_IDS,
  type InterruptionId,
  PRESSURE_IDS,
  type PressureId,
  pressureById,
  TRAP_IDS,
  type TrapId,
  trapById,
} from './hazards.ts';
import type { DrillSetup } from './hidden-fault.ts';
import { LEVELS } from './levels.ts';
import { drawn, itemAt } from './seeded.ts';

/** What happened in a drill, in order, for the debrief. Times are milliseconds of the clock the driver reads. */
export type DrillEntry = { readonly atMs: number } & (
  | {
      readonly kind: 'said';
      /** The state that asked. */
      readonly state: string;
      readonly meaning: MeaningId;
      /** What the machine of the drill showed there; missing where there was nothing to find. */
      readonly shown?: Finding;
      readonly safetyBefore: Prompt['safety'];
      readonly safetyAfter: Prompt['safety'];
      /** What the question was expected to tell, in bits; for evidence questions alone. */
      readonly gainBits?: number;
    }
  | { readonly kind: 'happened'; readonly hazard: HazardId }
  | { readonly kind: 'passed'; readonly hazard: TrapId }
  /** A hazard was answered as it has to be. */
  | { readonly kind: 'noticed'; readonly hazard: HazardId; readonly afterMs: number }
  | { readonly kind: 'fatal'; readonly hazard: HazardId }
);

/** A drill as far as it went. It holds no clock and no chance: the same events at the same times give the same. */
export interface DrillState {
  readonly machine: PlayedMachine;
  readonly entries: readonly DrillEntry[];
  /** The traps of this drill that still lie in the way. */
  readonly traps: readonly TrapId[];
  /** The trap the trainee stands in now. */
  readonly trap?: { readonly id: TrapId; readonly sinceMs: number };
  /** Waiting for its moment, or happened and not yet answered. */
  readonly interruption?: { readonly id: InterruptionId; readonly dueMs?: number; readonly sinceMs?: number };
  /** Who will still press for a short cut. */
  readonly pressures: readonly PressureId[];
  /** Who presses now: the job stands still until that is refused. */
  readonly pressed?: { readonly id: PressureId; readonly sinceMs: number };
  readonly over?: 'ended' | 'fatal';
}

/** How long a trap stands before it passes by itself. Expert estimate. */
const TRAP_MS = 15_000;
/** A hazard answered later than this was noticed late. Expert estimate. */
export const LATE_MS = 20_000;
/** The soonest and the latest an interruption comes once eyes or hands are at the machine. Expert estimates. */
const SOONEST_MS = 10_000;
const LATEST_MS = 40_000;

/** Somebody presses at the first or the second question of the moment it belongs to. Expert estimate. */
const LATEST_PRESSURE = 2;

/** A drill about to begin: its machine, the hazards of its level, and one interruption. */
export function beginDrill(setup: DrillSetup): DrillState {
  const { seed, level } = setup;
  const { traps, pressures } = LEVELS[level];
  const [interruption = INTERRUPTION_IDS[0]] = some(INTERRUPTION_IDS, 1, seed, 'interruption');
  return {
    machine: dealtMachine(setup),
    entries: [],
    traps: some(
      TRAP_IDS.filter((id) => trapById(id).from <= level),
      traps,
      seed,
      'trap',
    ),
    ...(interruption ? { interruption: { id: interruption } } : {}),
    pressures: some(PRESSURE_IDS, pressures, seed, 'pressure'),
  };
}

/** So many of a list, drawn without putting back. */
function some<T>(items: readonly T[], count: number, seed: number, name: string): readonly T[] {
  if (count === 0 || items.length === 0) return [];
  const item = itemAt(
    items.map((each) => [each, 1] as const),
    drawn(seed, `${name} ${count}`),
  );
  return [
    item,
    ...some(
      items.filter((each) => each !== item),
      count - 1,
      seed,
      name,
    ),
  ];
}

/** What the machine of the drill shows where the job asks now. */
export function shownNow(drill: DrillState, prompt: Prompt, context: JobContext): Finding | undefined {
  return findingFor(drill.machine, prompt.state, context);
}

/** The drill at a question: a trap may lie there, somebody may press, and an interruption may begin to wait. */
export function arrive(drill: DrillState, { state, safety }: Prompt, atMs: number): DrillState {
  if (drill.over) return drill;
  if (isEnd(state)) return { ...drill, over: 'ended' };
  return waitingFor(pressedAt(trapped(drill, state, atMs), safety, atMs), state, safety, atMs);
}

/** When {@link timePassed} has something to do, on the driver's clock; undefined where nothing waits. */
export function nextDueMs({ over, trap, pressed, interruption }: DrillState): number | undefined {
  if (over || pressed) return undefined;
  const due = [
    ...(trap && trapById(trap.id).passes ? [trap.sinceMs + TRAP_MS] : []),
    ...(interruption?.dueMs !== undefined && interruption.sinceMs === undefined ? [interruption.dueMs] : []),
  ];
  return due.length > 0 ? Math.min(...due) : undefined;
}

/** Lets happen what is due by now. The same drill where nothing is. */
export function timePassed(drill: DrillState, atMs: number): DrillState {
  const { over, trap, pressed, interruption } = drill;
  if (over || pressed) return drill;
  if (trap && trapById(trap.id).passes && atMs >= trap.sinceMs + TRAP_MS) {
    const { trap: _, ...rest } = drill;
    return noted(rest, { kind: 'passed', hazard: trap.id, atMs });
  }
  if (interruption?.dueMs !== undefined && interruption.sinceMs === undefined && atMs >= interruption.dueMs) {
    const happened = { ...interruption, sinceMs: atMs };
    return noted({ ...drill, interruption: happened }, { kind: 'happened', hazard: interruption.id, atMs });
  }
  return drill;
}

/**
 * Judges something said that the job took.
 * @param asked what the job asked when it was said
 * @param after what it asks now
 */
export function judge(
  drill: DrillState,
  { type: meaning }: HeardEvent,
  asked: { readonly prompt: Prompt; readonly context: JobContext },
  after: Prompt,
  atMs: number,
): DrillState {
  if (drill.over) return drill;
  const { prompt, context } = asked;
  const shown = shownNow(drill, prompt, context);
  const isEvidence = prompt.state.startsWith('job.inquiry.triage.') && context.next.kind === 'evidence';
  const said = noted(drill, {
    kind: 'said',
    atMs,
    state: prompt.state,
    meaning,
    ...(shown ? { shown } : {}),
    ...(isEvidence && context.next.kind === 'evidence' ? { gainBits: context.next.gainBits } : {}),
    safetyBefore: prompt.safety,
    safetyAfter: after.safety,
  });
  return arrive(weighed(said, meaning, atMs), after, atMs);
}

/** Whether a void phrase, or the one right answer, met whatever hazard stood. */
function weighed(drill: DrillState, meaning: MeaningId, atMs: number): DrillState {
  const { trap, pressed, interruption } = drill;
  const isVoid = riskOf(meaning) === 'void';
  if (pressed) return isVoid ? refused(drill, pressed, atMs) : drill;
  if (interruption?.sinceMs !== undefined) {
    if (!isVoid) return fatal(drill, interruption.id, atMs);
    const { interruption: _, ...rest } = drill;
    const afterMs = atMs - interruption.sinceMs;
    return noted(rest, { kind: 'noticed', hazard: interruption.id, afterMs, atMs });
  }
  if (!trap) return drill;
  const { untrue, answeredBy } = trapById(trap.id);
  if (meaning === untrue) return fatal(drill, trap.id, atMs);
  if (!isVoid && meaning !== answeredBy) return drill;
  const { trap: _, ...rest } = drill;
  return noted(rest, { kind: 'noticed', hazard: trap.id, afterMs: atMs - trap.sinceMs, atMs });
}

/** The state in which somebody presses for a short cut. */
export const DRILL_PRESSED = 'drill.pressed';

/** What somebody who is pressed may say: no, or yes. Whatever voids a lockout is a no as well, and goes to the job. */
export const PRESSED_ANSWERS = ['pressure.refuse', 'pressure.giveIn'] as const satisfies readonly MeaningId[];

export function isPressedAnswer(meaning: MeaningId): meaning is (typeof PRESSED_ANSWERS)[number] {
  return (PRESSED_ANSWERS as readonly MeaningId[]).includes(meaning);
}

/** The drill after somebody who was pressed refused or gave in. The job hears nothing of it. */
export function answerPressure(
  drill: DrillState,
  meaning: (typeof PRESSED_ANSWERS)[number],
  { safety }: Prompt,
  atMs: number,
): DrillState {
  const { pressed } = drill;
  if (!pressed || drill.over) return drill;
  const said = noted(drill, {
    kind: 'said',
    atMs,
    state: DRILL_PRESSED,
    meaning,
    safetyBefore: safety,
    safetyAfter: safety,
  });
  return meaning === 'pressure.refuse' ? refused(said, pressed, atMs) : fatal(said, pressed.id, atMs);
}

function refused(drill: DrillState, { id, sinceMs }: NonNullable<DrillState['pressed']>, atMs: number) {
  const { pressed: _, ...rest } = drill;
  return noted(rest, { kind: 'noticed', hazard: id, afterMs: atMs - sinceMs, atMs });
}

/** Nobody presses while another hazard stands, and nobody goes on pressing once the moment has passed. */
function pressedAt(drill: DrillState, safety: Prompt['safety'], atMs: number): DrillState {
  const { pressed, trap, interruption, pressures, entries, machine } = drill;
  if (pressed) {
    if (pressureById(pressed.id).at === safety) return drill;
    const { pressed: _, ...rest } = drill;
    return { ...rest, pressures: [...pressures, pressed.id] };
  }
  if (trap || interruption?.sinceMs !== undefined) return drill;
  const asked = entries.filter((entry) => entry.kind === 'said' && entry.safetyAfter === safety).length;
  const id = pressures.find(
    (each) =>
      pressureById(each).at === safety && asked > drawn(machine.setup.seed, `when ${each}`) * LATEST_PRESSURE,
  );
  if (!id) return drill;
  const rest = { ...drill, pressures: pressures.filter((each) => each !== id) };
  return noted({ ...rest, pressed: { id, sinceMs: atMs } }, { kind: 'happened', hazard: id, atMs });
}

function trapped(drill: DrillState, state: string, atMs: number): DrillState {
  if (drill.trap) {
    if (trapById(drill.trap.id).state === state) return drill;
    // Going back a step leaves the trap where it was.
    const { trap, ...rest } = drill;
    return { ...rest, traps: [...drill.traps, trap.id] };
  }
  const id = drill.traps.find((each) => trapById(each).state === state);
  if (!id) return drill;
  const traps = drill.traps.filter((each) => each !== id);
  return noted({ ...drill, traps, trap: { id, sinceMs: atMs } }, { kind: 'happened', hazard: id, atMs });
}

/** An interruption comes while eyes or hands are at the machine, and waits where nobody is. */
function waitingFor(drill: DrillState, state: string, safety: Prompt['safety'], atMs: number): DrillState {
  const { interruption, machine } = drill;
  if (!interruption || interruption.sinceMs !== undefined) return drill;
  const isAtMachine =
    state.startsWith('job.inquiry.') &&
    (safety === 'eyesOnly' || safety === 'lockedOut' || safety === 'handTurn');
  if (isAtMachine === (interruption.dueMs !== undefined)) return drill;
  if (!isAtMachine) return { ...drill, interruption: { id: interruption.id } };
  const waitMs = SOONEST_MS + drawn(machine.setup.seed, 'interruption time') * (LATEST_MS - SOONEST_MS);
  return { ...drill, interruption: { id: interruption.id, dueMs: atMs + waitMs } };
}

function fatal(drill: DrillState, hazard: HazardId, atMs: number): DrillState {
  return noted({ ...drill, over: 'fatal' }, { kind: 'fatal', hazard, atMs });
}

function noted(drill: DrillState, entry: DrillEntry): DrillState {
  return { ...drill, entries: [...drill.entries, entry] };
}

function isEnd(state: string): boolean {
  return state === 'closed' || state === 'job.inquiry.handedOver' || state === 'job.inquiry.proving.parked';
}
