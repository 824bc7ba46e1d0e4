import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

const BALE_MISS_RATE: Quantity = { name: 'share of bales missed', unit: '', low: 0, high: 1 };
export const BALES_LEFT: Quantity = {
  name: 'number of bales left',
  unit: '',
  low: 0,
  high: 1_000_000,
  whole: true,
};
export const MINUTES: Quantity = { name: 'time', unit: 'minutes', low: 0, high: 10_000 };

export interface FieldWork {
  /** Share of bales with a missed knot, 0 to 1; see `baleMissRate`. */
  readonly baleMissRate: number;
  readonly balesLeft: number;
  /** Time to pick up, open and bale a broken bale again, in minutes. */
  readonly minutesPerBrokenBale: number;
  /** Time to find and mend the fault, lockout and all, in minutes. */
  readonly minutesToRepair: number;
  /** True for a fault that can hurt or wreck: needles, plunger timing, safety stop, shear bolt, guards. */
  readonly safetyFault: boolean;
}

export interface BaleOnOrStop {
  readonly decision: 'bale on' | 'stop and mend' | 'stop: this fault is not one to bale with';
  /** Minutes lost to broken bales if baling goes on: miss rate times bales left times minutes each. */
  readonly rework: Figure<'min'>;
  readonly repair: Figure<'min'>;
}

/**
 * Whether broken bales will cost more time than the repair. A safety fault always stops, whatever the minutes.
 * @throws ImpossibleFigure for a share outside 0 to 1, bales outside 0 to 1,000,000 or times outside 0 to 10,000 min
 */
export function baleOnOrStop(work: FieldWork): BaleOnOrStop {
  const reworkMinutes =
    possible(BALE_MISS_RATE, work.baleMissRate) *
    possible(BALES_LEFT, work.balesLeft) *
    possible({ ...MINUTES, name: 'time for a broken bale' }, work.minutesPerBrokenBale);
  const repairMinutes = possible({ ...MINUTES, name: 'time for the repair' }, work.minutesToRepair);
  return {
    decision: decide(work.safetyFault, reworkMinutes, repairMinutes),
    rework: figure(reworkMinutes, 'min', {
      says: 'It goes on missing at the same rate and gets no worse.',
      standing: 'derived',
    }),
    repair: figure(repairMinutes, 'min', { says: 'The repair takes the time given.', standing: 'entered' }),
  };
}

function decide(safetyFault: boolean, rework: number, repair: number): BaleOnOrStop['decision'] {
  if (safetyFault) return 'stop: this fault is not one to bale with';
  return rework > repair ? 'stop and mend' : 'bale on';
}
