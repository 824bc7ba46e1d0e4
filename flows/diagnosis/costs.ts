/** What things cost in minutes. Expert estimates all. */

/** The whole lockout, paid once. */
export const LOCKOUT_MINUTES = 8;

/** Releasing for one hand turn, and locking again after it. */
export const HAND_TURN_MINUTES = 2;

/** Releasing the machine and counting ties after a repair. */
export const PROOF_MINUTES = 10;

/**
 * What a job loses by being handed over, until somebody else has found the fault: most of a working day. A check or a
 * repair is worth doing while its chance of finding the fault, times this, is more than it costs.
 */
export const HAND_OVER_MINUTES = 360;
