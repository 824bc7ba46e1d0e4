import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { endPressure, endPushHeld, endPushHeldUnevenly, knotRatio } from '../figures/end-push.ts';
import { springChange } from '../figures/spring-bolt.ts';
import { type FigureQuestion, percent } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';

/** Knots and strings: what they hold, and the spring behind them. */
export const KNOT_FIGURES = {
  'figure.knotLoad': {
    inputs: ['knotStrength', 'baleHeight', 'baleWidth'],
    answer: (given) => {
      const push = endPushHeld(given.number('knotStrength'));
      const pressure = endPressure(push.value, given.number('baleHeight'), given.number('baleWidth'));
      return {
        say: [
          LINES.knotsHold,
          ...given.say(push.value, 'poundForce'),
          LINES.onTheEnd,
          ...given.say(pressure.value, 'poundPerSquareInch'),
          LINES.grantedAlike,
        ],
        assumptions: push.assumptions,
      };
    },
  },
  'figure.unevenStrings': {
    inputs: ['knotStrength', 'tighterShare'],
    answer: (given) => {
      const knot = given.number('knotStrength');
      const push = endPushHeldUnevenly(knot, given.number('tighterShare') / 100);
      return {
        say: [
          LINES.unevenHold,
          ...given.say(push.value, 'poundForce'),
          LINES.evenHold,
          ...given.say(endPushHeld(knot).value, 'poundForce'),
        ],
        assumptions: push.assumptions,
      };
    },
  },
  'figure.knotRatio': {
    inputs: ['knotStrength', 'straightStrength'],
    answer: (given) => {
      const ratio = knotRatio(given.number('knotStrength'), given.number('straightStrength'));
      return {
        say: [LINES.knotKeeps, ...percent(ratio.value), LINES.ofStraight],
        assumptions: ratio.assumptions,
      };
    },
  },
  'figure.springBolt': {
    inputs: ['boltTurns', 'boltPitch'],
    answer: (given) => {
      const change = springChange(given.number('boltTurns'), given.number('boltPitch'));
      return {
        say: [LINES.springBy, ...given.say(change.value, 'millimetre'), LINES.checkManual],
        assumptions: change.assumptions,
      };
    },
  },
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;
