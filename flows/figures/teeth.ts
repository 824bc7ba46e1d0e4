import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';

export const TEETH: Quantity = { name: 'number of teeth', unit: '', low: 5, high: 200, whole: true };
export const SHAFT_SPEED: Quantity = { name: 'shaft speed', unit: 'turns a minute', low: 0, high: 2000 };
const RATIO: Quantity = { name: 'gear ratio', unit: '', low: 0.05, high: 50 };

/** One pair of sprockets or gears. */
export interface GearPair {
  readonly driverTeeth: number;
  readonly drivenTeeth: number;
}

/**
 * Angle by which a shaft is out when its own wheel sits one tooth wrong: 360 over teeth.
 * @param teeth whole number, 5 to 200
 * @throws ImpossibleFigure outside that range
 */
export function degreesPerTooth(teeth: number): Figure<'deg'> {
  return figure(360 / possible(TEETH, teeth), 'deg', {
    says: 'Degrees of the shaft that carries this wheel.',
    standing: 'derived',
  });
}

/**
 * Turns of the first shaft for one turn of the last: the product of driven over driver teeth.
 * @param train pairs in order from the driving end; an empty train is a straight shaft
 * @throws ImpossibleFigure for teeth outside 5 to 200
 */
export function gearRatio(train: readonly GearPair[]): number {
  return train.reduce(
    (ratio, { driverTeeth, drivenTeeth }) =>
      ratio *
      (possible({ ...TEETH, name: 'number of driven teeth' }, drivenTeeth) /
        possible({ ...TEETH, name: 'number of driver teeth' }, driverTeeth)),
    1,
  );
}

/**
 * Speed of the last shaft: speed of the first over the ratio. With the power take-off first and the crank last it is
 * the strokes a minute; turned by hand, the ratio is the flywheel turns for one stroke.
 * @param firstShaftRpm 0 to 2000 turns a minute
 * @param ratio 0.05 to 50, see `gearRatio`
 * @throws ImpossibleFigure outside those ranges
 */
export function lastShaftSpeed(firstShaftRpm: number, ratio: number): Figure<'turns/min'> {
  return figure(possible(SHAFT_SPEED, firstShaftRpm) / possible(RATIO, ratio), 'turns/min', {
    says: 'No belt, clutch or shear bolt slips.',
    standing: 'derived',
  });
}
