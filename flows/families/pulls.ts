import type { Check } from './family.ts';

/**
 * Pulls measured with a spring scale, each in one way wherever it is asked. Why it is asked and what a reading speaks
 * for belong to the family.
 */
type Pull = Omit<Check, 'why' | 'answers'>;

/** The pull that lifts the billhook tongue. */
export const TONGUE_PULL = {
  reach: 'lockout',
  look: 'tongue',
  prepare: ['Hook the scale on the tip of the tongue, and lift until it opens. Try the other knotter too.'],
  ask: 'Tell me the pull in pounds, or say how it lifts against the other knotter.',
  minutes: 4,
  measure: {
    dimension: 'force',
    plausible: { low: { amount: 1, unit: 'poundForce' }, high: { amount: 80, unit: 'poundForce' } },
    bands: [
      { below: { amount: 10, unit: 'poundForce' }, means: 'finding.liftsEasily' },
      { below: { amount: 20, unit: 'poundForce' }, means: 'finding.liftsEven' },
      { means: 'finding.liftsHard' },
    ],
    provenance: 'from memory',
    typically: 'Typical is ten to twenty pounds.',
  },
} as const satisfies Pull;

/** The pull at which the twine holder lets the held strand go. */
export const HOLDER_PULL = {
  reach: 'lockout',
  look: 'twineHolder',
  prepare: [
    'Hook the scale on the held strand. Pull along its working line until it first slips. Try the other knotter too.',
  ],
  ask: 'Tell me the pull in pounds, or say how it holds against the other knotter.',
  minutes: 4,
  measure: {
    dimension: 'force',
    plausible: { low: { amount: 1, unit: 'poundForce' }, high: { amount: 200, unit: 'poundForce' } },
    bands: [
      { below: { amount: 40, unit: 'poundForce' }, means: 'finding.slipsEasily' },
      { below: { amount: 60, unit: 'poundForce' }, means: 'finding.holdsEven' },
      { means: 'finding.holdsTooTight' },
    ],
    provenance: 'from memory',
    typically: 'Typical is forty to sixty pounds.',
  },
} as const satisfies Pull;
