import { LOCKOUT_STEPS, SAFE_STOP_STEPS } from '../../flows/lockout/steps.ts';
import type { Prompt } from '../../flows/prompt.ts';

type StepId = (typeof SAFE_STOP_STEPS)[number]['id'] | (typeof LOCKOUT_STEPS)[number]['id'];

/** A step in two or three words, for the list of all sixteen. */
const STEP_NAMES: Readonly<Record<StepId, string>> = {
  everyoneTold: 'Everyone told',
  energiesKnown: 'Know what moves',
  powerTakeOffOff: 'Power take-off off',
  parked: 'Parked',
  engineOff: 'Engine off',
  keyInPocket: 'Key in pocket',
  flywheelStopped: 'Flywheel stopped',
  shaftOff: 'Shaft off',
  wheelsChocked: 'Wheels chocked',
  flywheelHeld: 'Flywheel held',
  knotterHome: 'Knotters home',
  needlesHome: 'Needles strapped',
  densityReleased: 'Pressure released',
  twineSlack: 'Twine slack',
  triedNothingMoved: 'Tried it',
  confirmed: 'Confirmed',
};

export type StepMark = 'done' | 'now' | 'ahead';

export interface ListedStep {
  readonly id: StepId;
  readonly name: string;
  readonly mark: StepMark;
  /** What the steps up to and including this one's half allow. */
  readonly half: 'safeStop' | 'lockout';
}

/**
 * The sixteen steps with how far they are, or undefined where the shut-down is neither under way nor asked about.
 * The chart's own state is what counts: a step confirmed before something voided it is not done any more.
 */
export function lockoutProgress({ state }: Pick<Prompt, 'state'>): readonly ListedStep[] | undefined {
  const steps = [
    ...SAFE_STOP_STEPS.map(({ id }) => ({ id, half: 'safeStop' as const })),
    ...LOCKOUT_STEPS.map(({ id }) => ({ id, half: 'lockout' as const })),
  ];
  const [region, part, id] = state.split('.').slice(1);
  if (region !== 'safety' || (part !== 'stopping' && part !== 'lockingOut')) return undefined;
  const now = steps.findIndex((step) => step.id === id);
  if (now < 0) return undefined;
  return steps.map((step, at) => ({
    ...step,
    name: STEP_NAMES[step.id],
    mark: at < now ? 'done' : at === now ? 'now' : 'ahead',
  }));
}

/** Which step of how many, counted from one. */
export interface StepCount {
  readonly now: number;
  readonly all: number;
}

export function stepCount(steps: readonly ListedStep[] | undefined): StepCount | undefined {
  return steps && { now: steps.findIndex(({ mark }) => mark === 'now') + 1, all: steps.length };
}
