import type { SafetyState } from '../../flows/prompt.ts';

/** Common practice, no source. */
export const NOT_TO_DO = [
  'Do not trust the lockout recorded here. It ended with the record; build your own.',
  'Do not tie back or take out the needle safety stop.',
  'Do not feed or pull twine by hand on a running baler, and do not stand beside running knotters.',
  'Do not weld, heat or bend a needle or a billhook.',
  'Do not change several settings at once. Change one, count the turns, write them down.',
  'Do not throw away the failed string. Keep both its ends.',
] as const;

/** What the record last knew of the machine. It is never a reason to trust it. */
export const AS_LEFT: Readonly<Record<SafetyState, string>> = {
  keepOut: 'Not known to be stopped.',
  stopping: 'Being shut down, not yet at a safe stop.',
  eyesOnly: 'At a safe stop as reported: engine off, key out, flywheel seen still. Not locked out.',
  thisStepOnly: 'Between a safe stop and a lockout: some blocks on, some off.',
  lockedOut: 'Locked out as reported.',
  handTurn: 'Being turned by hand, blocks off. A cycle may be left half way.',
  poweredTest: 'Under power for counting ties.',
};

/** A line of the lockout log, by the state that was reached. */
export const REACHED: Readonly<Record<SafetyState, string>> = {
  keepOut: 'Keep out: nothing is locked out',
  stopping: 'Shutting down',
  eyesOnly: 'Safe stop reached: eyes only',
  thisStepOnly: 'Locking out or closing up, step by step',
  lockedOut: 'Locked out: hands allowed',
  handTurn: 'Turning by hand: hands on the rim only',
  poweredTest: 'Power test: nobody near',
};
