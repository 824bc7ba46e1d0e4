import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { sayWhole } from '../../grammar/say.ts';
import { balesPerPackage, type LabelledFor } from '../figures/bales-per-package.ts';
import {
  runnageFromLength,
  texFromRunnage,
  twineLengthFromMass,
  twineMassOnBales,
} from '../figures/runnage.ts';
import { nextBallChange } from '../figures/splice-window.ts';
import { checkLabelByCount, leastHonestLength } from '../figures/twine-label.ts';
import { twinePerBale, twinePerString } from '../figures/twine-per-bale.ts';
import { convert } from '../figures/units.ts';
import { baleOf, type FigureQuestion, type Given } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';

/** Twine: how much, how many bales, what it weighs, and whether its label is true. */
export const TWINE_FIGURES = {
  'figure.twineForBales': {
    inputs: ['baleLength', 'baleHeight', 'balesToMake'],
    answer: (given) => {
      const perBale = twinePerBale(baleOf(given));
      return {
        say: [
          LINES.oneBaleTakes,
          ...given.say(perBale.value, 'foot'),
          LINES.allTake,
          ...given.say(perBale.value * given.number('balesToMake'), 'foot'),
          LINES.grantedLies,
        ],
        assumptions: perBale.assumptions,
      };
    },
  },
  'figure.balesFromTwine': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight'],
    answer: (given) => {
      const bales = packageBales(given);
      return {
        say: [
          LINES.packageTies,
          ...given.say(bales.value, 'bale'),
          LINES.grantedLies,
          LINES.grantedBallsUsed,
        ],
        assumptions: bales.assumptions,
      };
    },
  },
  'figure.balesLeftOnBall': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight', 'balesSinceChange'],
    answer: (given) => {
      const string = twinePerString(baleOf(given));
      const { balesLeft, stage } = nextBallChange(
        ballFeet(given),
        string.value,
        given.number('balesSinceChange'),
      );
      const stageLine = {
        'splice window': [LINES.spliceWindow],
        steady: [],
        'change soon': [LINES.changeSoon],
        'outran its length': [LINES.outran],
      }[stage];
      return {
        say: [LINES.ballLeft, ...given.say(balesLeft, 'bale'), ...stageLine, LINES.grantedLies],
        assumptions: string.assumptions,
      };
    },
  },
  'figure.twineWeight': {
    inputs: ['runnage', 'baleLength', 'baleHeight', 'balesToMake'],
    answer: (given) => {
      const perBale = twinePerBale(baleOf(given));
      const mass = twineMassOnBales(given.number('balesToMake'), perBale.value, given.number('runnage'));
      return {
        say: [
          LINES.twineWeighs,
          ...given.say(mass.value, 'kilogram'),
          LINES.about,
          ...given.say(convert('mass', mass.value, 'kg', 'lb'), 'pound'),
          LINES.grantedLies,
        ],
        assumptions: [...perBale.assumptions, ...mass.assumptions],
      };
    },
  },
  'figure.ballLength': {
    inputs: ['runnage', 'twineWeight'],
    answer: (given) => {
      const long = twineLengthFromMass(kilograms(given.number('twineWeight')), given.number('runnage'));
      return {
        say: [
          LINES.ballHolds,
          ...given.say(convert('length', long.value, 'm', 'ft'), 'foot'),
          LINES.grantedTwineOnly,
        ],
        assumptions: long.assumptions,
      };
    },
  },
  'figure.runnage': {
    inputs: ['labelLength', 'twineWeight'],
    answer: (given) => {
      const runnage = runnageFromLength(
        convert('length', given.number('labelLength'), 'ft', 'm'),
        kilograms(given.number('twineWeight')),
      );
      return {
        say: [
          LINES.runnageIs,
          ...given.say(runnage.value, 'metrePerKilogram'),
          LINES.texIs,
          ...sayWhole(Math.round(texFromRunnage(runnage.value).value)),
          LINES.grantedTwineOnly,
        ],
        assumptions: [{ says: 'The weight is twine only, without wrapper or core.', standing: 'entered' }],
      };
    },
  },
  'figure.twineLabel': {
    inputs: ['labelLength', 'labelledFor', 'balls', 'baleLength', 'baleHeight', 'balesCounted'],
    answer: (given) => {
      const expected = packageBales(given);
      const labelFeet = ballFeet(given) * given.number('balls');
      const check = checkLabelByCount(labelFeet, expected.value, given.number('balesCounted'));
      return {
        say: [
          check.verdict === 'label borne out' ? LINES.labelHolds : LINES.labelShort,
          LINES.eachBaleTook,
          ...given.say(check.twinePerBale.value, 'foot'),
          LINES.labelMustHold,
          ...given.say(leastHonestLength(labelFeet).value, 'foot'),
          LINES.grantedBallsUsed,
        ],
        assumptions: [...expected.assumptions, ...check.twinePerBale.assumptions],
      };
    },
  },
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;

function kilograms(pounds: number): number {
  return convert('mass', pounds, 'lb', 'kg');
}

const LABELLED_FOR: Readonly<Record<string, LabelledFor>> = {
  'label.eachBall': 'each ball',
  'label.wholePackage': 'whole package',
};

function packageBales(given: Given) {
  const counted = balesPerPackage(
    {
      labelFt: given.number('labelLength'),
      labelledFor: LABELLED_FOR[given.chose('labelledFor')] ?? 'not known',
      balls: given.number('balls'),
    },
    twinePerString(baleOf(given)).value,
  );
  if (counted.kind !== 'known') throw new TypeError('What the label is for is asked before.');
  return counted.bales;
}

/** Length of one ball. */
function ballFeet(given: Given): number {
  const label = given.number('labelLength');
  return given.chose('labelledFor') === 'label.eachBall' ? label : label / given.number('balls');
}
