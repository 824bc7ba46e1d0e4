import type { HearingGrade } from '../grammar/hearing-grade.ts';
import type { MeaningId } from '../grammar/lexicon.ts';
import type { Slots } from '../grammar/understand.ts';
import type { Counts } from './diagnosis/learning.ts';
import type { MachineBand } from './machine-values.ts';

/** How a meaning reached the charts. A button and a phrase send the same event. */
export type Channel =
  | { readonly by: 'touch' }
  | {
      readonly by: 'voice';
      /** What the recogniser's evidence is worth, 0 to 1. */
      readonly margin: number;
      /** Speech above the noise, in decibels. */
      readonly snrDb: number;
      /** How well the ears heard then; missing where nobody asked, and in records from before it was kept. */
      readonly hearing?: HearingGrade;
    };

/** A meaning somebody conveyed. */
export interface HeardEvent {
  readonly type: MeaningId;
  readonly slots: Slots;
  readonly channel: Channel;
}

/** What the tablet notices by itself, each of which takes a lockout away. */
export const SYSTEM_VOIDS = [
  'void.restarted',
  'void.slept',
  'void.clockJumped',
  'void.leftIdle',
  'void.handedRound',
] as const;

export type SystemVoid = (typeof SYSTEM_VOIDS)[number];

export interface SystemVoidEvent {
  readonly type: SystemVoid;
}

/** What this tablet has learnt from its own jobs, handed to a new job by somebody's choice, and logged with it. */
export interface EstimatesEvent {
  readonly type: 'estimates.taken';
  readonly counts: Counts;
}

/** What is known of the machine the job is about, handed to the job as it begins, and logged with it. */
export interface MachineEvent {
  readonly type: 'machine.known';
  readonly bands: readonly MachineBand[];
}

export type JobEvent = HeardEvent | SystemVoidEvent | EstimatesEvent | MachineEvent;

export function isSystemVoid(event: JobEvent): event is SystemVoidEvent {
  return (SYSTEM_VOIDS as readonly string[]).includes(event.type);
}

/** Whether an event is something somebody said or pressed. */
export function isHeard(event: JobEvent): event is HeardEvent {
  return 'channel' in event;
}
