import { type Figure, figure } from './figure.ts';
import { ImpossibleFigure, possible, type Quantity } from './quantity.ts';

export const CRANK: Quantity = { name: 'crank radius', unit: 'inches', low: 2, high: 30 };
export const ROD: Quantity = { name: 'connecting rod length', unit: 'inches', low: 4, high: 120 };
export const ANGLE: Quantity = { name: 'crank angle', unit: 'degrees', low: -360, high: 360 };
/** Slider-crank formulas need a rod that clears the crank; every baler has one well longer. */
const SHORTEST_ROD_TO_CRANK = 1.2;

/** Crank and connecting rod of the plunger, in inches, the rod in line with the crank centre. */
export interface PlungerDrive {
  readonly crankRadiusIn: number;
  readonly rodLengthIn: number;
}

/**
 * Distance of the plunger from full compression when the crank is `crankDeg` away from it:
 * x = (r + l) - (r cos a + sqrt(l^2 - r^2 sin^2 a)), written without the loss of digits near 0.
 * @param crankDeg -360 to 360 degrees; before and after full compression are alike
 * @throws ImpossibleFigure for a crank outside 2 to 30 in, a rod outside 4 to 120 in or shorter than 1.2 cranks
 */
export function plungerFromFullCompression(drive: PlungerDrive, crankDeg: number): Figure<'in'> {
  const { r, l } = checkedDrive(drive);
  const angle = (possible(ANGLE, crankDeg) * Math.PI) / 180;
  const offLineIn = r * Math.sin(angle);
  const crankPartIn = 2 * r * Math.sin(angle / 2) ** 2;
  const rodPartIn = offLineIn ** 2 / (l + Math.sqrt(l * l - offLineIn ** 2));
  return figure(crankPartIn + rodPartIn, 'in', {
    says: 'The plunger runs in line with the crank centre and nothing is loose.',
    standing: 'derived',
  });
}

/**
 * The inverse: crank degrees from full compression, 0 to 180, when the plunger stands `distanceIn` from it.
 * Near full compression an inch is many degrees: measure there in inches, set in teeth.
 * @param distanceIn 0 to the stroke, which is two crank radii
 * @throws ImpossibleFigure outside that range, or as `plungerFromFullCompression`
 */
export function crankFromPlunger(drive: PlungerDrive, distanceIn: number): Figure<'deg'> {
  const { r, l } = checkedDrive(drive);
  const x = possible(
    { name: 'plunger distance from full compression', unit: 'inches', low: 0, high: 2 * r },
    distanceIn,
  );
  // Law of cosines in the triangle of crank centre, crank pin and plunger pin, in half-angle form: it keeps its
  // digits where the plunger hardly moves.
  const halfSineSquared = (x * (2 * l - x)) / (4 * r * (r + l - x));
  const angle = 2 * Math.asin(Math.sqrt(Math.min(1, halfSineSquared)));
  return figure((angle * 180) / Math.PI, 'deg', {
    says: 'The plunger runs in line with the crank centre and nothing is loose.',
    standing: 'derived',
  });
}

/**
 * How far the plunger is out of place when its timing slips from one crank angle to another.
 * @param crankDeg where it ought to be, degrees from full compression
 * @param slipDeg how far it slipped, degrees of crank; see `degreesPerTooth`
 * @throws ImpossibleFigure as `plungerFromFullCompression`
 */
export function plungerErrorFromSlip(drive: PlungerDrive, crankDeg: number, slipDeg: number): Figure<'in'> {
  const ought = plungerFromFullCompression(drive, crankDeg);
  const is = plungerFromFullCompression(drive, crankDeg + slipDeg);
  return figure(is.value - ought.value, 'in', ...ought.assumptions);
}

function checkedDrive({ crankRadiusIn, rodLengthIn }: PlungerDrive): { r: number; l: number } {
  const r = possible(CRANK, crankRadiusIn);
  const l = possible(ROD, rodLengthIn);
  if (l < SHORTEST_ROD_TO_CRANK * r) {
    throw new ImpossibleFigure(
      'The connecting rod is too short for that crank radius. Say the rod length and the crank radius again.',
    );
  }
  return { r, l };
}
