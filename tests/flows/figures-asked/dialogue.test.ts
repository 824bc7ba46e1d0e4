import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beginFigure as beginFigureIn,
  type FigureDialogue,
  type FigureTurn,
  figurePrompt,
  hearFigure,
  type WorkedFigure,
} from '../../../flows/figures-asked/dialogue.ts';
import { INPUT_IDS, type InputId, inputOf } from '../../../flows/figures-asked/inputs.ts';
import { knownValues } from '../../../flows/figures-asked/known.ts';
import { FIGURE_LINES } from '../../../flows/figures-asked/lines.ts';
import { FIGURES } from '../../../flows/figures-asked/questions.ts';
import type { UnitSystem } from '../../../flows/figures-asked/unit-system.ts';
import { type FigureValue, type FigureValues, isPossible } from '../../../flows/figures-asked/values.ts';
import { isDayOfCalendar } from '../../../grammar/calendar.ts';
import { FIGURE_MEANINGS, type FigureMeaning, type MeaningId } from '../../../grammar/lexicon.ts';
import { sayText } from '../../../grammar/say.ts';
import type { Slots } from '../../../grammar/understand.ts';
import { TestJob } from '../talk.ts';
import { unspeakable } from './say-everything.ts';

const JOB = new TestJob().prompt;

/** A figure answered in inches and pounds. */
function beginFigure(figure: FigureMeaning, known: FigureValues, system: UnitSystem = 'inch'): FigureTurn {
  return beginFigureIn(figure, known, system);
}

/** A possible value of an input. */
function possibleValue(id: InputId): fc.Arbitrary<FigureValue> {
  const { takes } = inputOf(id);
  switch (takes.kind) {
    case 'measurement':
      return fc.double({ min: takes.quantity.low, max: takes.quantity.high, noNaN: true });
    case 'count':
      return fc.integer({ min: Math.ceil(takes.quantity.low), max: takes.quantity.high });
    case 'missCount':
      return fc
        .integer({ min: 1, max: 9999 })
        .chain((bales) => fc.integer({ min: 0, max: bales }).map((misses) => ({ misses, bales })));
    case 'day':
      return fc
        .record({ month: fc.integer({ min: 1, max: 12 }), day: fc.integer({ min: 1, max: 31 }) })
        .filter(isDayOfCalendar);
    case 'choice':
      return fc.constantFrom(...takes.meanings);
  }
}

/** Says a value the way a person or a button does. */
function saying(id: InputId, value: FigureValue): readonly [MeaningId, Slots] {
  const { takes } = inputOf(id);
  if (typeof value === 'object') {
    return 'month' in value ? ['value.day', { day: value }] : ['value.missRate', { missCount: value }];
  }
  if (typeof value === 'string') return [value, {}];
  return takes.kind === 'measurement'
    ? ['value.measured', { measurement: { amount: value, unit: takes.unit } }]
    : ['value.count', { count: value }];
}

/** Gives a value and accepts it where it is read back. */
function give(dialogue: FigureDialogue, value: FigureValue): FigureTurn {
  const turn = hearFigure(dialogue, ...saying(dialogue.asking, value));
  if (turn.kind !== 'asks' || turn.dialogue.pending === undefined) return turn;
  return hearFigure(turn.dialogue, 'yes', {});
}

/** Goes through a figure with the values given, in whatever order it asks. */
function workThrough(
  figure: FigureMeaning,
  values: Partial<Record<InputId, FigureValue>>,
  system: UnitSystem = 'inch',
): WorkedFigure {
  let turn = beginFigure(figure, {}, system);
  for (let step = 0; turn.kind === 'asks' && step < 20; step += 1) {
    const value = values[turn.dialogue.asking];
    if (value === undefined) throw new Error(`${figure} asks for ${turn.dialogue.asking}.`);
    turn = give(turn.dialogue, value);
  }
  if (turn.kind !== 'answers') throw new Error(`${figure} came to ${turn.kind}.`);
  return turn.worked;
}

describe.each(FIGURE_MEANINGS)('%s', (figure) => {
  const { inputs } = FIGURES[figure];
  const anyValues = fc.record(Object.fromEntries(inputs.map((id) => [id, possibleValue(id)])));

  it('asks one thing at a time and then answers, in words that can all be spoken', () => {
    fc.assert(
      fc.property(anyValues, fc.constantFrom<UnitSystem>('inch', 'metric'), (values, system) => {
        let turn = beginFigure(figure, {}, system);
        const asked: InputId[] = [];
        for (let step = 0; turn.kind === 'asks' && step < inputs.length; step += 1) {
          const { dialogue } = turn;
          asked.push(dialogue.asking);
          const prompt = figurePrompt(dialogue, JOB);
          expect(
            unspeakable([...prompt.notices, ...prompt.question, ...prompt.brief, ...prompt.why]),
          ).toEqual([]);
          const said = hearFigure(dialogue, ...saying(dialogue.asking, values[dialogue.asking] ?? 0));
          if (said.kind === 'asks') {
            expect(unspeakable(figurePrompt(said.dialogue, JOB).question)).toEqual([]);
          }
          turn = give(dialogue, values[dialogue.asking] ?? 0);
        }
        // Values that are possible each by itself may still not fit together, and then the last is asked again.
        if (turn.kind === 'asks') {
          expect(turn.dialogue.notices).toContain(FIGURE_LINES.doNotFit);
          expect(turn.dialogue.asking).toBe(inputs.at(-1));
          return;
        }
        expect(asked).toEqual(inputs);
        expect(turn.kind).toBe('answers');
        if (turn.kind === 'answers') expect(unspeakable(turn.worked.say)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('is left by "go back" from every question, and given up by "not sure"', () => {
    const turn = beginFigure(figure, {});
    if (turn.kind !== 'asks') throw new Error('A figure with nothing known has something to ask.');
    expect(hearFigure(turn.dialogue, 'goBack', {})).toEqual({ kind: 'leaves', say: [FIGURE_LINES.left] });
    const { takes } = inputOf(turn.dialogue.asking);
    if (takes.kind === 'choice') return;
    expect(hearFigure(turn.dialogue, 'notSure', {}).kind).toBe('leaves');
  });

  it('takes no answer of the job for its own', () => {
    const turn = beginFigure(figure, {});
    if (turn.kind !== 'asks') throw new Error('A figure with nothing known has something to ask.');
    expect(hearFigure(turn.dialogue, 'knot.newEnd' as MeaningId, {}).kind).toBe('notTaken');
  });
});

describe('a value that cannot be true', () => {
  it('is questioned with what it has to be, and never kept', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...INPUT_IDS.filter((id) => 'quantity' in inputOf(id).takes)),
        fc.constantFrom(-1, 0.5, 400, 1e6, 1e9, Number.NaN),
        (id, value) => {
          const { takes } = inputOf(id);
          const figure = FIGURE_MEANINGS.find((each) => FIGURES[each].inputs.includes(id));
          if (!figure || isPossible(takes, value)) return;
          const known = Object.fromEntries(
            FIGURES[figure].inputs.filter((other) => other !== id).map((other) => [other, 0]),
          );
          const turn = beginFigure(figure, known);
          if (turn.kind !== 'asks') throw new Error(`${figure} does not ask for ${id}.`);
          const said = hearFigure(turn.dialogue, ...saying(id, value));
          if (said.kind !== 'asks') throw new Error('An impossible value ends nothing.');
          expect(said.dialogue.pending).toBeUndefined();
          expect(said.dialogue.values[id]).toBeUndefined();
          const { question, notices } = figurePrompt(said.dialogue, JOB);
          expect(notices).toEqual([FIGURE_LINES.impossible]);
          expect(question).toContain(FIGURE_LINES.span);
          expect(unspeakable(question)).toEqual([]);
        },
      ),
    );
  });

  it('a bale of 400 inches is answered with twelve to sixty inches', () => {
    const turn = beginFigure('figure.twineForBales', {});
    if (turn.kind !== 'asks') throw new Error('The bale length is asked first.');
    const said = hearFigure(turn.dialogue, 'value.measured', { measurement: { amount: 400, unit: 'inch' } });
    if (said.kind !== 'asks') throw new Error('An impossible value ends nothing.');
    expect(sayText(figurePrompt(said.dialogue, JOB).question)).toContain(
      'It has to be twelve to sixty inches',
    );
  });

  it('no ties and no bales are refused as a count', () => {
    const turn = beginFigure('figure.missRate', {});
    if (turn.kind !== 'asks') throw new Error('The count is asked first.');
    const said = hearFigure(turn.dialogue, 'value.missRate', { missCount: { misses: 0, bales: 0 } });
    expect(said.kind === 'asks' && said.dialogue.notices).toEqual([FIGURE_LINES.impossible]);
  });
});

describe('a value', () => {
  it('may be said in another unit of its dimension', () => {
    const turn = beginFigure('figure.twineForBales', {});
    if (turn.kind !== 'asks') throw new Error('The bale length is asked first.');
    const said = hearFigure(turn.dialogue, 'value.measured', {
      measurement: { amount: 914.4, unit: 'millimetre' },
    });
    if (said.kind !== 'asks') throw new Error('A length is read back.');
    expect(said.dialogue.pending?.value).toBeCloseTo(36, 9);
    expect(sayText(figurePrompt(said.dialogue, JOB).question)).toContain(
      'nine hundred fourteen point four millimetres Is that right?',
    );
  });

  it('is asked again after "no", and nothing else answers the read-back', () => {
    const turn = beginFigure('figure.tooth', {});
    if (turn.kind !== 'asks') throw new Error('The teeth are asked first.');
    const said = hearFigure(turn.dialogue, 'value.count', { count: 24 });
    if (said.kind !== 'asks') throw new Error('A count is read back.');
    expect(hearFigure(said.dialogue, 'thatIsDone', {}).kind).toBe('notTaken');
    const refused = hearFigure(said.dialogue, 'no', {});
    expect(refused.kind === 'asks' && refused.dialogue.pending).toBeUndefined();
  });

  it('known before is not asked, and is said back with the answer', () => {
    const turn = beginFigure('figure.flake', { baleLength: 36 });
    if (turn.kind !== 'asks') throw new Error('The strokes are asked.');
    expect(turn.dialogue.asking).toBe('strokesPerBale');
    const answered = give(turn.dialogue, 12);
    if (answered.kind !== 'answers') throw new Error('Everything was given.');
    const text = sayText(answered.worked.say);
    expect(text).toContain('Bale length: thirty-six inches');
    expect(text).toContain('Each flake is three inches');
  });
});

describe('the published and the customary example', () => {
  // A small-farm magazine's "Calculating baling twine needs": 3 ft by 1.5 ft with two strings take 18.0 ft a bale,
  // so 1,000 bales take two rolls of 9,000 ft.
  it('eighteen feet of twine a bale, eighteen thousand for a thousand', () => {
    const { say } = workThrough('figure.twineForBales', {
      baleLength: 36,
      baleHeight: 18,
      balesToMake: 1000,
    });
    const text = sayText(say);
    expect(text).toContain('One bale takes eighteen feet');
    expect(text).toContain('All of them take eighteen thousand feet');
  });

  it('a label for each ball ties twice as many bales as one for the package of two', () => {
    const twine = { labelLength: 9000, balls: 2, baleLength: 36, baleHeight: 14 };
    const package_ = workThrough('figure.balesFromTwine', { ...twine, labelledFor: 'label.wholePackage' });
    const each = workThrough('figure.balesFromTwine', { ...twine, labelledFor: 'label.eachBall' });
    // 9,000 ft over 200 in a bale.
    expect(sayText(package_.say)).toContain('The package ties five hundred forty bales');
    expect(sayText(each.say)).toContain('The package ties one thousand eighty bales');
  });

  it('a danger sign always stops, whatever the minutes', () => {
    const { say } = workThrough('figure.baleOnOrStop', {
      dangerSign: 'yes',
      missCount: { misses: 1, bales: 1000 },
      balesToMake: 1,
      minutesPerBroken: 1,
      minutesToRepair: 9000,
    });
    expect(say).toContain(FIGURE_LINES.stopDanger);
  });

  it('a clean run that a broken knotter often makes too is no proof', () => {
    const ten = workThrough('figure.fixed', { missCount: { misses: 6, bales: 60 }, cleanTies: 10 });
    expect(ten.say).toContain(FIGURE_LINES.fixedNotYet);
    const thirty = workThrough('figure.fixed', { missCount: { misses: 6, bales: 60 }, cleanTies: 29 });
    expect(thirty.say).toContain(FIGURE_LINES.fixedYes);
  });
});

describe('check values recomputed from the formulas, as they are spoken', () => {
  const PLUNGER = { crankRadius: 15, rodLength: 40 };
  const POUNDS_OF_9_KG = 9 / 0.45359237;

  // Handbook formulas and unit factors are held to their sources in tests/outside; here it matters what is heard.
  it.each<[FigureMeaning, UnitSystem, Partial<Record<InputId, FigureValue>>, string]>([
    [
      'figure.ballLength',
      'metric',
      { runnage: 400, twineWeight: POUNDS_OF_9_KG },
      'three thousand six hundred metres',
    ],
    [
      'figure.runnage',
      'inch',
      { labelLength: 9000, twineWeight: 40 },
      'two hundred twenty-five feet to the pound',
    ],
    [
      'figure.runnage',
      'metric',
      { labelLength: 9000, twineWeight: 40 },
      'one hundred fifty-one metres to the kilogram',
    ],
    [
      'figure.runnage',
      'inch',
      { labelLength: 9000, twineWeight: 40 },
      'tex: six thousand six hundred fourteen',
    ],
    [
      'figure.unevenStrings',
      'inch',
      { knotStrength: 130, tighterShare: 70 },
      'three hundred seventy-one pounds of pull',
    ],
    [
      'figure.ballChange',
      'inch',
      { balesPerBall: 540, allMisses: 4, missesAfterChange: 2 },
      'in less than zero point one percent of cases. So look at the splice',
    ],
    ['figure.crankAngle', 'inch', { ...PLUNGER, plungerDistance: 1 }, 'eighteen degrees'],
    ['figure.strokeTime', 'inch', { strokesPerMinute: 80 }, 'One stroke takes zero point seven five seconds'],
    ['figure.strokeTime', 'inch', { strokesPerMinute: 80 }, 'two hundred forty degrees'],
    [
      'figure.baleWeight',
      'inch',
      { baleLength: 36, baleHeight: 14, baleWidth: 18, baleDensity: 10 },
      'fifty-two point five pounds',
    ],
    [
      'figure.baleWeight',
      'metric',
      { baleLength: 36, baleHeight: 14, baleWidth: 18, baleDensity: 10 },
      'twenty-three point eight kilograms',
    ],
    ['figure.plunger', 'metric', { ...PLUNGER, crankAngle: 30 }, 'sixty-nine point one millimetres'],
    [
      'figure.knotLoad',
      'metric',
      { knotStrength: 130, baleHeight: 14, baleWidth: 18 },
      'fourteen point two kilopascals',
    ],
    [
      'figure.twineForBales',
      'metric',
      { baleLength: 36, baleHeight: 14, balesToMake: 1 },
      'five point zero eight metres',
    ],
  ])('%s in %s units, given %j: "%s"', (figure, system, values, said) => {
    expect(sayText(workThrough(figure, values, system).say)).toContain(said);
  });
});

describe('the day a worn part is due', () => {
  const wear = { wearBefore: 0.2, wearBeforeAt: 10_000, wearNow: 0.41, wearNowAt: 20_000, wearLimit: 0.5 };
  const season = {
    balesPerDay: 400,
    today: { month: 6, day: 20 },
    seasonBegins: { month: 6, day: 1 },
    seasonEnds: { month: 8, day: 31 },
  };

  it('goes on with the part that was just worked out, and asks only for the season', () => {
    const worked = workThrough('figure.wear', wear);
    const known = knownValues('figure.wearDate', new TestJob().context, [worked], {});
    const turn = beginFigure('figure.wearDate', known);
    expect(turn.kind === 'asks' && turn.dialogue.asking).toBe('balesPerDay');
  });

  it('is a day of this season or of a later one', () => {
    // 0.0204 mm a thousand bales through the origin: the line is at 0.50 mm at 24,510 bales, eleven full days from now.
    const text = sayText(workThrough('figure.wearDate', { ...wear, ...season }).say);
    expect(text).toContain('The line itself reaches the limit on July first of this season.');
    const late = { ...season, today: { month: 8, day: 30 } };
    expect(sayText(workThrough('figure.wearDate', { ...wear, ...late }).say)).toContain(
      'June tenth of the next season.',
    );
  });

  it('takes no day that no calendar has, and says so', () => {
    const { today: _, ...rest } = { ...wear, ...season };
    const turn = beginFigure('figure.wearDate', rest);
    if (turn.kind !== 'asks') throw new Error('The day is asked for.');
    const said = hearFigure(turn.dialogue, 'value.day', { day: { month: 2, day: 30 } });
    if (said.kind !== 'asks') throw new Error('An impossible day ends nothing.');
    expect(said.dialogue.values.today).toBeUndefined();
    const { notices, question } = figurePrompt(said.dialogue, JOB);
    expect(sayText([...notices, ...question])).toContain('That cannot be. What day is it today?');
    expect(sayText(question)).toContain('It has to be a day of the calendar');
  });
});
