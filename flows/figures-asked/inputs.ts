import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Dimension, UnitId } from '../../grammar/measurements.ts';
import type { SpokenUnit } from '../../grammar/say.ts';
import { BALE_DENSITY, MOISTURE } from '../figures/bale.ts';
import { BALES_LEFT, MINUTES } from '../figures/bale-on-or-stop.ts';
import {
  BALE_HEIGHT,
  BALE_LENGTH,
  BALE_WEIGHT,
  BALE_WIDTH,
  STROKES_PER_MINUTE,
} from '../figures/bale-quantities.ts';
import { BALLS, FOOTAGE } from '../figures/bales-per-package.ts';
import { BALES_PER_BALL } from '../figures/ball-change-test.ts';
import { PITCH as CHAIN_PITCH, PITCHES } from '../figures/chain-wear.ts';
import { CLEAN_TIES } from '../figures/clean-ties.ts';
import { NOTCHES, TRIPS } from '../figures/disc-step.ts';
import { KNOT_STRENGTH, TENSILE_STRENGTH } from '../figures/end-push.ts';
import { ANGLE, CRANK, ROD } from '../figures/plunger.ts';
import type { Quantity } from '../figures/quantity.ts';
import { RUNNAGE } from '../figures/runnage.ts';
import { BALES_PER_DAY } from '../figures/season-date.ts';
import { MISSES } from '../figures/side-test.ts';
import { BALES_SINCE, SPLICE_WINDOW_BALES } from '../figures/splice-window.ts';
import { PITCH as THREAD_PITCH, TURNS } from '../figures/spring-bolt.ts';
import { STROKES_PER_BALE } from '../figures/strokes.ts';
import { SHAFT_SPEED, TEETH } from '../figures/teeth.ts';
import { BALES_COUNTED } from '../figures/twine-per-bale.ts';
import { BALE_COUNT, WEAR, WEAR_LIMIT } from '../figures/wear.ts';

/** What a figure has to be told: how it is asked for aloud, and what can be true. */
export interface FigureInput {
  /** Said before its value where the value was known already: "Bale length:". */
  readonly name: string;
  readonly ask: string;
  readonly takes: InputTakes;
  /** True for what stays the same from one figure to the next, and so is not asked twice in a job. */
  readonly stays: boolean;
}

export type InputTakes =
  | {
      readonly kind: 'measurement';
      readonly dimension: Dimension;
      /** The unit the figure is worked out in; any unit of the dimension may be said. */
      readonly unit: UnitId;
      readonly quantity: Quantity;
    }
  | { readonly kind: 'count'; readonly quantity: Quantity; readonly unit?: SpokenUnit }
  | { readonly kind: 'missCount' }
  | { readonly kind: 'day' }
  | { readonly kind: 'choice'; readonly meanings: readonly MeaningId[] };

/** The most that is counted in one figure; more is a slip of the tongue. */
const MOST_BALES = 100_000;

/** Every input of every figure, once: two figures that need the bale length ask for it in the same words. */
export const INPUTS = {
  baleLength: {
    name: 'Bale length:',
    ask: 'How long is the bale?',
    takes: length('inch', BALE_LENGTH),
    stays: true,
  },
  baleHeight: {
    name: 'Bale height:',
    ask: 'How high is the bale, the side that the string goes round?',
    takes: length('inch', BALE_HEIGHT),
    stays: true,
  },
  baleWidth: {
    name: 'Bale width:',
    ask: 'How wide is the bale, from string to string and over?',
    takes: length('inch', BALE_WIDTH),
    stays: true,
  },
  baleWeight: {
    name: 'Bale weight:',
    ask: 'What does the bale weigh?',
    takes: {
      kind: 'measurement',
      dimension: 'mass',
      unit: 'pound',
      quantity: BALE_WEIGHT,
    },
    stays: true,
  },
  balesToMake: {
    name: 'Bales to make:',
    ask: 'How many bales are there still to make?',
    takes: { kind: 'count', quantity: { ...BALES_LEFT, low: 1, high: MOST_BALES }, unit: 'bale' },
    stays: false,
  },
  labelLength: {
    name: 'Length on the label:',
    ask: 'What length of twine does the label say?',
    takes: length('foot', FOOTAGE),
    stays: true,
  },
  labelledFor: {
    name: 'The label is for:',
    ask: 'Is that for each ball, or for the whole package? It makes a difference of two.',
    takes: { kind: 'choice', meanings: ['label.eachBall', 'label.wholePackage'] },
    stays: true,
  },
  balls: {
    name: 'Balls in the package:',
    ask: 'How many balls are in the package?',
    takes: { kind: 'count', quantity: { ...BALLS, low: 2 } },
    stays: true,
  },
  balesSinceChange: {
    name: 'Bales since the ball was changed:',
    ask: 'How many bales have you made since the ball was changed?',
    takes: { kind: 'count', quantity: BALES_SINCE, unit: 'bale' },
    stays: false,
  },
  balesCounted: {
    name: 'Bales counted:',
    ask: 'How many bales did the counter show for that package?',
    takes: { kind: 'count', quantity: BALES_COUNTED, unit: 'bale' },
    stays: false,
  },
  runnage: {
    name: 'Length in its weight:',
    ask: 'How many metres to the kilo does the label say, or how many feet to the pound?',
    takes: {
      kind: 'measurement',
      dimension: 'runnage',
      unit: 'metrePerKilogram',
      quantity: RUNNAGE,
    },
    stays: true,
  },
  twineWeight: {
    name: 'Weight of the twine:',
    ask: 'What does that twine weigh, without its wrapper?',
    takes: {
      kind: 'measurement',
      dimension: 'mass',
      unit: 'pound',
      quantity: { name: 'weight of twine', unit: 'pounds', low: 0.25, high: 2000 },
    },
    stays: false,
  },
  baleDensity: {
    name: 'Pounds to the cubic foot:',
    ask: 'How many pounds to the cubic foot?',
    takes: { kind: 'count', quantity: { ...BALE_DENSITY, whole: true }, unit: 'poundPerCubicFoot' },
    stays: false,
  },
  tighterShare: {
    name: 'Share of the tighter string:',
    ask: 'What share of the pull has the tighter string, in percent? Fifty is even.',
    takes: {
      kind: 'count',
      quantity: { name: 'share of the tighter string', unit: 'percent', low: 50, high: 100, whole: true },
      unit: 'percent',
    },
    stays: false,
  },
  knotStrength: {
    name: 'Knot strength on the label:',
    ask: 'What knot strength does the twine label say?',
    takes: {
      kind: 'measurement',
      dimension: 'force',
      unit: 'poundForce',
      quantity: KNOT_STRENGTH,
    },
    stays: true,
  },
  strokesPerBale: {
    name: 'Strokes to a bale:',
    ask: 'How many plunger strokes go into a bale?',
    takes: { kind: 'count', quantity: STROKES_PER_BALE, unit: 'stroke' },
    stays: true,
  },
  strokesPerMinute: {
    name: 'Strokes a minute:',
    ask: 'How many plunger strokes in a minute?',
    takes: { kind: 'count', quantity: STROKES_PER_MINUTE, unit: 'stroke' },
    stays: true,
  },
  missCount: {
    name: 'Missed before:',
    ask: 'How many bales missed before, out of how many? Say it like this: two out of ten.',
    takes: { kind: 'missCount' },
    stays: true,
  },
  leftMisses: {
    name: 'Misses on the left:',
    ask: 'How many misses on the left, seen from behind?',
    takes: { kind: 'count', quantity: MISSES, unit: 'miss' },
    stays: false,
  },
  rightMisses: {
    name: 'Misses on the right:',
    ask: 'How many misses on the right?',
    takes: { kind: 'count', quantity: MISSES, unit: 'miss' },
    stays: false,
  },
  allMisses: {
    name: 'Misses in all:',
    ask: 'How many misses in all?',
    takes: { kind: 'count', quantity: { ...MISSES, low: 1 }, unit: 'miss' },
    stays: false,
  },
  balesPerBall: {
    name: 'Bales from one ball:',
    ask: 'How many bales does one ball last?',
    takes: { kind: 'count', quantity: { ...BALES_PER_BALL, low: SPLICE_WINDOW_BALES + 1 }, unit: 'bale' },
    stays: true,
  },
  missesAfterChange: {
    name: 'Misses just after a ball change:',
    ask: 'How many of those misses came within three bales of a ball change?',
    takes: { kind: 'count', quantity: MISSES, unit: 'miss' },
    stays: false,
  },
  cleanTies: {
    name: 'Good ties since the repair:',
    ask: 'How many ties in a row were good since the repair?',
    takes: { kind: 'count', quantity: { ...CLEAN_TIES, high: MOST_BALES }, unit: 'tie' },
    stays: false,
  },
  minutesPerBroken: {
    name: 'Time for a broken bale:',
    ask: 'How many minutes does one broken bale cost you?',
    takes: { kind: 'count', quantity: { ...MINUTES, high: 240 }, unit: 'minute' },
    stays: true,
  },
  minutesToRepair: {
    name: 'Time for the repair:',
    ask: 'How many minutes would finding and mending it take, lockout and all?',
    takes: { kind: 'count', quantity: MINUTES, unit: 'minute' },
    stays: false,
  },
  dangerSign: {
    name: 'Sign of struck needles:',
    ask: 'Is there any sign of a struck needle, a broken shear bolt, or a needle stop that does not work?',
    takes: { kind: 'choice', meanings: ['yes', 'no'] },
    stays: true,
  },
  crankRadius: {
    name: 'Crank radius:',
    ask: 'How long is the crank, half of the plunger stroke?',
    takes: length('inch', CRANK),
    stays: true,
  },
  rodLength: {
    name: 'Rod length:',
    ask: 'How long is the connecting rod?',
    takes: length('inch', ROD),
    stays: true,
  },
  crankAngle: {
    name: 'Crank angle:',
    ask: 'How many degrees is the crank away from full compression?',
    takes: { kind: 'count', quantity: { ...ANGLE, low: 0 }, unit: 'degree' },
    stays: false,
  },
  plungerDistance: {
    name: 'Plunger short of full compression:',
    ask: 'How far is the plunger from full compression?',
    takes: length('inch', { name: 'plunger distance', unit: 'inches', low: 0, high: 2 * CRANK.high }),
    stays: false,
  },
  teeth: {
    name: 'Teeth:',
    ask: 'How many teeth has the wheel?',
    takes: { kind: 'count', quantity: TEETH, unit: 'tooth' },
    stays: false,
  },
  driverTeeth: {
    name: 'Teeth of the driving wheel:',
    ask: 'How many teeth has the driving wheel?',
    takes: { kind: 'count', quantity: TEETH, unit: 'tooth' },
    stays: false,
  },
  drivenTeeth: {
    name: 'Teeth of the driven wheel:',
    ask: 'How many teeth has the driven wheel?',
    takes: { kind: 'count', quantity: TEETH, unit: 'tooth' },
    stays: false,
  },
  chainPitch: {
    name: 'Chain pitch:',
    ask: 'What is the pitch of the chain, from pin to pin when new?',
    takes: length('inch', CHAIN_PITCH),
    stays: true,
  },
  chainPitches: {
    name: 'Pitches measured:',
    ask: 'Over how many pitches did you measure? Twelve is usual.',
    takes: { kind: 'count', quantity: PITCHES },
    stays: false,
  },
  chainLength: {
    name: 'Measured length:',
    ask: 'How long are those pitches now, on the tight side?',
    takes: length('inch', { name: 'measured length', unit: 'inches', low: 1, high: 360 }),
    stays: false,
  },
  notches: {
    name: 'Notches in the disc:',
    ask: 'How many notches has the twine disc?',
    takes: { kind: 'count', quantity: NOTCHES },
    stays: true,
  },
  tripsToReturn: {
    name: 'Trips until the mark came back:',
    ask: 'After how many trips was the painted notch back where it began?',
    takes: { kind: 'count', quantity: TRIPS },
    stays: false,
  },
  boltTurns: {
    name: 'Turns of the bolt:',
    ask: 'How many turns of the bolt?',
    takes: {
      kind: 'measurement',
      dimension: 'rotation',
      unit: 'turn',
      quantity: { ...TURNS, low: 0 },
    },
    stays: false,
  },
  boltPitch: {
    name: 'Pitch of the thread:',
    ask: 'What is the pitch of its thread?',
    takes: length('millimetre', THREAD_PITCH),
    stays: false,
  },
  wearBefore: {
    name: 'Wear measured first:',
    ask: 'How much wear did you measure the first time?',
    takes: length('millimetre', WEAR),
    stays: false,
  },
  wearBeforeAt: {
    name: 'Bales on the part then:',
    ask: 'How many bales had the part made then?',
    takes: { kind: 'count', quantity: { ...BALE_COUNT, low: 1, high: 999_999, whole: true }, unit: 'bale' },
    stays: false,
  },
  wearNow: {
    name: 'Wear measured now:',
    ask: 'How much wear do you measure now?',
    takes: length('millimetre', WEAR),
    stays: false,
  },
  wearNowAt: {
    name: 'Bales on the part now:',
    ask: 'How many bales has the part made now?',
    takes: { kind: 'count', quantity: { ...BALE_COUNT, low: 1, high: 999_999, whole: true }, unit: 'bale' },
    stays: false,
  },
  wearLimit: {
    name: 'Wear limit:',
    ask: 'At how much wear is the part done?',
    takes: length('millimetre', WEAR_LIMIT),
    stays: false,
  },
  balesPerDay: {
    name: 'Bales a day:',
    ask: 'How many bales do you make in a day?',
    takes: { kind: 'count', quantity: { ...BALES_PER_DAY, whole: true }, unit: 'bale' },
    stays: true,
  },
  today: {
    name: 'Today:',
    ask: 'What day is it today? Say the month, then the day.',
    takes: { kind: 'day' },
    stays: true,
  },
  seasonBegins: {
    name: 'The season begins:',
    ask: 'On what day does your baling season begin?',
    takes: { kind: 'day' },
    stays: true,
  },
  seasonEnds: {
    name: 'The season ends:',
    ask: 'On what day does your baling season end?',
    takes: { kind: 'day' },
    stays: true,
  },
  moisture: {
    name: 'Moisture:',
    ask: 'How many percent moisture has the hay?',
    takes: {
      kind: 'count',
      quantity: { ...MOISTURE, low: 100 * MOISTURE.low, high: 100 * MOISTURE.high, whole: true },
      unit: 'percent',
    },
    stays: true,
  },
  goodWeight: {
    name: 'Weight of the last good bales:',
    ask: 'What did a bale weigh when it last tied well?',
    takes: { kind: 'measurement', dimension: 'mass', unit: 'pound', quantity: BALE_WEIGHT },
    stays: true,
  },
  straightStrength: {
    name: 'Strength of the straight twine:',
    ask: 'What does the straight twine hold, without a knot?',
    takes: { kind: 'measurement', dimension: 'force', unit: 'poundForce', quantity: TENSILE_STRENGTH },
    stays: true,
  },
  drivingSpeed: {
    name: 'Turns a minute of the driving shaft:',
    ask: 'How many turns a minute does the driving shaft make?',
    takes: { kind: 'count', quantity: { ...SHAFT_SPEED, whole: true }, unit: 'turn' },
    stays: false,
  },
  balesOnCounter: {
    name: 'Bales on the counter:',
    ask: 'How many bales has the knotter made, by its counter?',
    takes: { kind: 'count', quantity: { ...BALE_COUNT, high: 999_999, whole: true }, unit: 'bale' },
    stays: true,
  },
} as const satisfies Readonly<Record<string, FigureInput>>;

export type InputId = keyof typeof INPUTS;

export const INPUT_IDS = Object.keys(INPUTS) as readonly InputId[];

export function inputOf(id: InputId): FigureInput {
  return INPUTS[id];
}

function length<Unit extends UnitId>(unit: Unit, quantity: Quantity) {
  return { kind: 'measurement', dimension: 'length', unit, quantity } as const;
}
