import { type Say, sayInventory, sayMeasure, sayWhole } from '../../grammar/say.ts';
import type { NextStep } from './next-step.ts';

const PIECES = {
  takes: 'It takes',
  finds: 'and finds the fault',
  leaves: 'What you found leaves it the cause',
  inAHundred: 'times in a hundred.',
  onceInAHundred: 'once in a hundred.',
} as const;

const TELLS_MOST = 'No other question tells the kinds of fault apart as fast.';

/** One sentence that says why this step and no other was chosen; nothing where there is no choice to explain. */
export function sayWhyThatOne(step: NextStep): Say {
  switch (step.kind) {
    case 'evidence':
      return [TELLS_MOST];
    case 'check':
      return [PIECES.takes, ...sayMinutes(step.minutes), PIECES.finds, ...sayChance(step.chanceOfFinding)];
    case 'name':
      return [PIECES.leaves, ...sayChance(step.probability)];
    case 'open':
    case 'handOver':
      return [];
  }
}

/** Every fragment that {@link sayWhyThatOne} can produce, for the recorded voice. */
export function whyThatOneInventory(): readonly string[] {
  return [...sayInventory(), ...Object.values(PIECES), TELLS_MOST];
}

/** To the nearest half minute, and never none. */
function sayMinutes(minutes: number): Say {
  return sayMeasure(Math.max(0.5, minutes), 'minute', { finestPart: 2 });
}

/** In whole hundredths; a chance too small for one is still called one, and a certainty ninety-nine. */
function sayChance(probability: number): Say {
  const hundredths = Math.min(99, Math.max(1, Math.round(100 * probability)));
  return hundredths === 1 ? [PIECES.onceInAHundred] : [...sayWhole(hundredths), PIECES.inAHundred];
}
