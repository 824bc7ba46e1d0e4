import { sayDay } from '../../grammar/calendar.ts';
import type { FigureMeaning } from '../../grammar/lexicon.ts';
import { type Say, sayMeasure } from '../../grammar/say.ts';
import { camOutlook } from '../figures/cam-wear.ts';
import { USUAL_CONFIDENCE } from '../figures/confidence.ts';
import { type SeasonDate, seasonDate } from '../figures/season-date.ts';
import { forecastWear, type WearForecast } from '../figures/wear.ts';
import type { FigureQuestion, Given } from './figure-question.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import type { FigureAnswer } from './values.ts';

/** Wear: how long a part lasts, and until which day. */
export const WEAR_FIGURES = {
  'figure.wear': {
    inputs: ['wearBefore', 'wearBeforeAt', 'wearNow', 'wearNowAt', 'wearLimit'],
    answer: answerWear,
  },
  'figure.wearDate': {
    inputs: [
      'wearBefore',
      'wearBeforeAt',
      'wearNow',
      'wearNowAt',
      'wearLimit',
      'balesPerDay',
      'today',
      'seasonBegins',
      'seasonEnds',
    ],
    goesOnFrom: 'figure.wear',
    answer: answerWearDate,
  },
  'figure.cam': {
    inputs: ['balesOnCounter'],
    answer: (given) => {
      const { meanWear, balesToMaintenance } = camOutlook(given.number('balesOnCounter'));
      return {
        say: [
          LINES.camWear,
          ...given.say(meanWear.value, 'millimetre'),
          ...(balesToMaintenance.value > 0
            ? [LINES.camDue, ...given.say(balesToMaintenance.value, 'bale')]
            : [LINES.camOver]),
          LINES.grantedOneTest,
          LINES.checkManual,
        ],
        assumptions: meanWear.assumptions,
      };
    },
  },
} as const satisfies Readonly<Partial<Record<FigureMeaning, FigureQuestion>>>;

function answerWear(given: Given): FigureAnswer {
  const forecast = wearForecast(given);
  if (forecast.kind === 'no wear trend') return answerNoTrend(forecast);
  return {
    say: [
      LINES.wearLimitAt,
      ...given.say(forecast.limitAt.value, 'bale'),
      LINES.wearEarliest,
      ...given.say(forecast.earliestLimitAt.value, 'bale'),
      LINES.wearLeft,
      ...given.say(forecast.balesLeft.value, 'bale'),
      LINES.grantedSteady,
    ],
    assumptions: forecast.balesLeft.assumptions,
  };
}

/** The wear line once more, with its ends as days: the early one is what to go by. */
function answerWearDate(given: Given): FigureAnswer {
  const forecast = wearForecast(given);
  if (forecast.kind === 'no wear trend') return answerNoTrend(forecast);
  const dateOfCount = (bales: number) =>
    seasonDate(
      Math.max(0, bales - given.number('wearNowAt')),
      given.number('balesPerDay'),
      given.day('today'),
      { begins: given.day('seasonBegins'), ends: given.day('seasonEnds') },
    );
  const earliest = dateOfCount(forecast.earliestLimitAt.value);
  const likely = dateOfCount(forecast.limitAt.value);
  return {
    say: [
      LINES.wearDateEarliest,
      ...sayDate(earliest),
      LINES.wearDateLikely,
      ...sayDate(likely),
      LINES.grantedSteady,
      LINES.grantedEveryDay,
    ],
    assumptions: [...forecast.limitAt.assumptions, ...earliest.assumptions],
  };
}

function sayDate({ date, season }: SeasonDate): Say {
  if (date === null) return [LINES.afterTenSeasons];
  switch (season) {
    case 0:
      return [...sayDay(date), LINES.thisSeason];
    case 1:
      return [...sayDay(date), LINES.nextSeason];
    default:
      return [...sayDay(date), LINES.inSeasons, ...sayMeasure(season, 'season')];
  }
}

function wearForecast(given: Given): WearForecast {
  return forecastWear({
    readings: [
      { bales: given.number('wearBeforeAt'), wearMm: given.number('wearBefore') },
      { bales: given.number('wearNowAt'), wearMm: given.number('wearNow') },
    ],
    limitMm: given.number('wearLimit'),
    balesNow: given.number('wearNowAt'),
    from: 'new at zero',
    confidence: USUAL_CONFIDENCE,
  });
}

function answerNoTrend({ says }: Extract<WearForecast, { kind: 'no wear trend' }>): FigureAnswer {
  return { say: [LINES.wearNoTrend], assumptions: [{ says, standing: 'derived' }] };
}
