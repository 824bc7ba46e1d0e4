import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Prompt } from '../prompt.ts';
import type { DrillLevel } from './levels.ts';

/**
 * What goes wrong around the machine of a drill. Confirming a step that a hazard makes untrue, or going on after one
 * that takes the lockout away, ends the drill at once: at a real machine it is how people are maimed. The situations
 * are common practice, no source.
 */
export interface Hazard {
  /** What the trainee is told happens. */
  readonly happens: string;
  /** What the trainee has to notice; said in the debrief, and when the drill ends over it. */
  readonly lesson: string;
}

/** Makes one step of a procedure untrue while that step is asked for. */
export interface Trap extends Hazard {
  /** The state that asks for the step. */
  readonly state: string;
  /** The words that must not be said yet. */
  readonly untrue: MeaningId;
  /** What happens when the trainee waits; missing where waiting does not help. */
  readonly passes?: string;
  /** The step's other answer, where that is the right one. */
  readonly answeredBy?: MeaningId;
  readonly from: DrillLevel;
}

export const TRAPS = {
  keyWithHelper: {
    state: 'job.safety.stopping.keyInPocket',
    untrue: 'lockout.keyInPocket',
    happens: 'A helper has pulled the key, and keeps it in his hand.',
    passes: 'The helper hands you the key, and you put it in your pocket.',
    lesson: 'A key counts only in your own pocket.',
    from: 1,
  },
  flywheelTurning: {
    state: 'job.safety.stopping.flywheelStopped',
    untrue: 'lockout.flywheelStopped',
    happens: 'The flywheel is still ticking round.',
    passes: 'The flywheel stands still now.',
    lesson: 'A flywheel coasts. Wait until your eyes say it has stopped.',
    from: 1,
  },
  knotterTripped: {
    state: 'job.safety.lockingOut.knotterHome',
    untrue: 'lockout.knotterHome',
    answeredBy: 'lockout.knotterTripped',
    happens: 'One knotter stands part way round, with its pawl in.',
    lesson: 'A tripped knotter finishes its cycle the moment the flywheel turns.',
    from: 2,
  },
  rimGives: {
    state: 'job.safety.lockingOut.triedNothingMoved',
    untrue: 'lockout.triedNothingMoved',
    happens: 'You push the rim, and it gives a hand’s breadth.',
    lesson: 'What moves on the try is not locked out.',
    from: 2,
  },
  childNear: {
    state: 'job.safety.releasing.nobodyNear',
    untrue: 'release.nobodyNear',
    happens: 'A child has come up to the baler to watch.',
    passes: 'The child has been led away, and nobody is near.',
    lesson: 'No power while anybody stands near.',
    from: 1,
  },
} as const satisfies Readonly<Record<string, Trap>>;

export type TrapId = keyof typeof TRAPS;
export const TRAP_IDS = Object.keys(TRAPS) as readonly TrapId[];

export function trapById(id: TrapId): Trap {
  return TRAPS[id];
}

/** Happens in the middle of the looking, and takes the safe stop or the lockout away. */
export const INTERRUPTIONS = {
  helperInCab: {
    happens: 'A helper walks over and climbs into the cab.',
    lesson: 'With somebody at the tractor nothing is locked out.',
  },
  keyLent: {
    happens: 'Your telephone rings. You hand the key to a helper, who needs something from the cab.',
    lesson: 'The key out of your pocket ends the lockout.',
  },
  shaftBack: {
    happens: 'You see that somebody has put the drive shaft back on the tractor.',
    lesson: 'A shaft that is back on can turn.',
  },
  noiseInside: {
    happens: 'Something in the baler goes clunk.',
    lesson: 'A noise nobody can explain ends the lockout.',
  },
  otherPerson: {
    happens: 'Somebody comes to help, and reaches for the other knotter.',
    lesson: 'Another person needs a lockout of his own.',
  },
} as const satisfies Readonly<Record<string, Hazard>>;

export type InterruptionId = keyof typeof INTERRUPTIONS;
export const INTERRUPTION_IDS = Object.keys(INTERRUPTIONS) as readonly InterruptionId[];

/**
 * Somebody asks for a short cut, and has to be refused in so many words before the job goes on. Giving in ends the
 * drill at once.
 */
export interface Pressure extends Hazard {
  /** What may be done at the machine when it comes. */
  readonly at: Prompt['safety'];
}

export const PRESSURES = {
  reachIn: {
    at: 'eyesOnly',
    happens: 'The customer says: it has stopped, so just reach in and pull that bit out.',
    lesson: 'Stopped is not locked out. Eyes may go in, hands may not.',
  },
  tieStopBack: {
    at: 'eyesOnly',
    happens: 'The customer says: tie the needle stop back, it only costs us shear bolts.',
    lesson: 'The needle stop keeps the plunger off the needles. It is never tied back.',
  },
  leaveShaftOn: {
    at: 'thisStepOnly',
    happens: 'The customer says: rain is coming, skip the rest of that list this once.',
    lesson: 'Hurry is no reason. A lockout with a step left out is none.',
  },
  bumpIt: {
    at: 'lockedOut',
    happens: 'The customer says: just bump it with the tractor, and you will see what it does.',
    lesson: 'Nothing is bumped while anybody is at the knotters.',
  },
  turnRim: {
    at: 'lockedOut',
    happens: 'A helper says: I will turn the flywheel a little while you feel in there.',
    lesson: 'Nobody turns the flywheel while hands or tools are inside.',
  },
  standAndWatch: {
    at: 'poweredTest',
    happens: 'A helper says: I will stand at the knotters and watch them tie.',
    lesson: 'Nobody stands at a running knotter. Watch from the seat.',
  },
} as const satisfies Readonly<Record<string, Pressure>>;

export type PressureId = keyof typeof PRESSURES;
export const PRESSURE_IDS = Object.keys(PRESSURES) as readonly PressureId[];

export function pressureById(id: PressureId): Pressure {
  return PRESSURES[id];
}

export const HAZARDS = { ...TRAPS, ...INTERRUPTIONS, ...PRESSURES };

export type HazardId = keyof typeof HAZARDS;

export function hazardById(id: HazardId): Hazard {
  return HAZARDS[id];
}

export function isPressure(id: HazardId): id is PressureId {
  return Object.hasOwn(PRESSURES, id);
}
