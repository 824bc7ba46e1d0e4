import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { sayMeasure } from '../../grammar/say.ts';
import { baleDensity, baleWeight, densityChange, dryMatter } from '../figures/bale.ts';
import { daysOfBaling } from '../figures/season-date.ts';
import { balesPerHour, flake, lengthScatter, secondsPerBale, throughput } from '../figures/strokes.ts';
import { convert } from '../figures/units.ts';
import { baleOf, type FigureQuestion } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';

/** Bales: their weight, density and flakes, and how many of them in a time. */
export const BALE_FIGURES = {
  'figure.baleDensity': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleWeight'],
    answer: (given) => {
      const density = baleDensity(
        { ...baleOf(given), widthIn: given.number('baleWidth') },
        given.number('baleWeight'),
      );
      return {
        say: [LINES.density, ...given.say(density.value, 'poundPerCubicFoot'), LINES.grantedSquare],
        assumptions: density.assumptions,
      };
    },
  },
  'figure.baleWeight': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleDensity'],
    answer: (given) => {
      const weight = baleWeight(
        { ...baleOf(given), widthIn: given.number('baleWidth') },
        given.number('baleDensity'),
      );
      return {
        say: [LINES.baleWeighs, ...given.say(weight.value, 'pound'), LINES.grantedSquare],
        assumptions: weight.assumptions,
      };
    },
  },
  'figure.denser': {
    inputs: ['baleLength', 'baleHeight', 'baleWidth', 'baleWeight', 'goodWeight'],
    answer: (given) => {
      const size = { ...baleOf(given), widthIn: given.number('baleWidth') };
      const change = densityChange(
        baleDensity(size, given.number('baleWeight')).value,
        baleDensity(size, given.number('goodWeight')).value,
      );
      return {
        say: [change.suspect ? LINES.denserNow : LINES.denserNot, LINES.grantedSquare],
        assumptions: change.ratio.assumptions,
      };
    },
  },
  'figure.dryMatter': {
    inputs: ['baleWeight', 'moisture'],
    answer: (given) => {
      const dry = dryMatter(given.number('baleWeight'), given.number('moisture') / 100);
      return { say: [LINES.dryIs, ...given.say(dry.value, 'pound')], assumptions: dry.assumptions };
    },
  },
  'figure.flake': {
    inputs: ['baleLength', 'strokesPerBale'],
    answer: (given) => {
      const [long, strokes] = [given.number('baleLength'), given.number('strokesPerBale')];
      const each = flake(long, strokes);
      const scatter = lengthScatter(long, strokes);
      return {
        say: [
          LINES.flakeIs,
          ...given.say(each.value, 'inch'),
          LINES.scatterIs,
          ...given.say(scatter.value, 'inch'),
          LINES.grantedStrokes,
        ],
        assumptions: [...each.assumptions, ...scatter.assumptions],
      };
    },
  },
  'figure.balesPerHour': {
    inputs: ['strokesPerMinute', 'strokesPerBale'],
    answer: (given) => {
      const [pace, strokes] = [given.number('strokesPerMinute'), given.number('strokesPerBale')];
      const rate = balesPerHour(pace, strokes);
      return {
        say: [
          LINES.perHour,
          ...given.say(rate.value, 'bale'),
          LINES.oneEvery,
          ...given.say(secondsPerBale(pace, strokes).value, 'second'),
          LINES.grantedNoStops,
        ],
        assumptions: rate.assumptions,
      };
    },
  },
  'figure.hayRate': {
    inputs: ['baleWeight', 'strokesPerMinute', 'strokesPerBale'],
    answer: (given) => {
      const rate = throughput(
        given.number('baleWeight'),
        given.number('strokesPerMinute'),
        given.number('strokesPerBale'),
      );
      return {
        say: [
          LINES.hayInHour,
          ...given.say(convert('mass', rate.value, 'tonne', 'lb'), 'pound'),
          LINES.about,
          ...given.say(convert('mass', rate.value, 'tonne', 'kg'), 'kilogram'),
          LINES.grantedNoStops,
        ],
        assumptions: rate.assumptions,
      };
    },
  },
  'figure.season': {
    inputs: ['balesToMake', 'balesPerDay'],
    answer: (given) => ({
      say: [
        LINES.lasts,
        ...sayMeasure(daysOfBaling(given.number('balesToMake'), given.number('balesPerDay')), 'day'),
        LINES.grantedNoStops,
      ],
      assumptions: [{ says: 'Baling every day at the same pace; rain puts it off.', standing: 'derived' }],
    }),
  },
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;
