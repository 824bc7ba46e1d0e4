import { type Figure, figure } from './figure.ts';
import { possible, type Quantity } from './quantity.ts';
import { convert } from './units.ts';

const TWINE_MASS: Quantity = { name: 'weight of twine', unit: 'kilograms', low: 0.1, high: 1000 };
const TWINE_LENGTH: Quantity = { name: 'length of twine', unit: 'metres', low: 1, high: 1_000_000 };
export const RUNNAGE: Quantity = { name: 'twine runnage', unit: 'metres a kilogram', low: 50, high: 2000 };
const BALES: Quantity = { name: 'number of bales', unit: '', low: 0, high: 1_000_000, whole: true };
const TWINE_PER_BALE: Quantity = { name: 'twine a bale', unit: 'feet', low: 3, high: 60 };

/**
 * Length from weight: length = mass times runnage.
 * @param massKg 0.1 to 1000 kg
 * @param runnageMPerKg 50 to 2000 m/kg
 * @throws ImpossibleFigure outside those ranges
 */
export function twineLengthFromMass(massKg: number, runnageMPerKg: number): Figure<'m'> {
  return figure(possible(TWINE_MASS, massKg) * possible(RUNNAGE, runnageMPerKg), 'm', {
    says: 'The weight is twine only, without wrapper or core.',
    standing: 'entered',
  });
}

/**
 * Runnage from a weighed length: 1 m to 1,000,000 m over 0.1 to 1000 kg.
 * @throws ImpossibleFigure outside those ranges
 */
export function runnageFromLength(lengthM: number, massKg: number): Figure<'m/kg'> {
  return figure(possible(TWINE_LENGTH, lengthM) / possible(TWINE_MASS, massKg), 'm/kg');
}

/**
 * Linear density in tex, grams a kilometre: one million over the runnage in metres a kilogram.
 * @param runnageMPerKg 50 to 2000 m/kg
 * @throws ImpossibleFigure outside that range
 */
export function texFromRunnage(runnageMPerKg: number): Figure<'tex'> {
  return figure(1_000_000 / possible(RUNNAGE, runnageMPerKg), 'tex');
}

/**
 * Weight of the twine on a number of bales.
 * @param bales whole number, 0 to 1,000,000
 * @param twinePerBaleFt twine on one bale in feet, see `twinePerBale`
 * @param runnageMPerKg 50 to 2000 m/kg
 * @throws ImpossibleFigure outside those ranges
 */
export function twineMassOnBales(bales: number, twinePerBaleFt: number, runnageMPerKg: number): Figure<'kg'> {
  const perBaleM = convert('length', possible(TWINE_PER_BALE, twinePerBaleFt), 'ft', 'm');
  return figure((possible(BALES, bales) * perBaleM) / possible(RUNNAGE, runnageMPerKg), 'kg');
}
