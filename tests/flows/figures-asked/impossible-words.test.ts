import { describe, expect, it } from 'vitest';
import {
  beginFigure,
  type FigureTurn,
  figurePrompt,
  hearFigure,
} from '../../../flows/figures-asked/dialogue.ts';
import { type InputId, inputOf } from '../../../flows/figures-asked/inputs.ts';
import { FIGURES } from '../../../flows/figures-asked/questions.ts';
import { FIGURE_MEANINGS } from '../../../grammar/lexicon.ts';
import { sayText } from '../../../grammar/say.ts';
import { understand } from '../../../grammar/understand.ts';
import { jobAtHolderPull, TestJob } from '../talk.ts';
import { unspeakable } from './say-everything.ts';

const JOB = new TestJob().prompt;

/** A figure that is asking for an input, everything before it being known. */
function asking(id: InputId) {
  const figure = FIGURE_MEANINGS.find((each) => FIGURES[each].inputs.includes(id));
  if (!figure) throw new Error(`No figure asks for ${id}.`);
  const { inputs } = FIGURES[figure];
  const known = Object.fromEntries(
    inputs.slice(0, inputs.indexOf(id)).map((each) => [each, someValue(each)]),
  );
  const turn = beginFigure(figure, known, 'inch');
  if (turn.kind !== 'asks' || turn.dialogue.asking !== id)
    throw new Error(`${figure} does not ask for ${id}.`);
  return turn.dialogue;
}

function someValue(id: InputId) {
  const { takes } = inputOf(id);
  switch (takes.kind) {
    case 'measurement':
    case 'count':
      return Math.ceil(takes.quantity.low);
    case 'missCount':
      return { misses: 1, bales: 10 };
    case 'day':
      return { month: 6, day: 1 };
    case 'choice':
      return takes.meanings[0] as string as 'yes';
  }
}

/** What the app answers to words said for an input: the sentences, and whether anything was kept or waits for a yes. */
function answerTo(id: InputId, words: string): { readonly said: string; readonly isTaken: boolean } {
  const dialogue = asking(id);
  const prompt = figurePrompt(dialogue, JOB);
  const understood = understand(words, prompt.expecting);
  if (understood.outcome === 'refused') {
    const say = [understood.sentence ?? '', ...prompt.brief];
    expect(unspeakable(say)).toEqual([]);
    return { said: sayText(say), isTaken: false };
  }
  if (understood.outcome !== 'understood') throw new Error(`"${words}" is ambiguous.`);
  const turn: FigureTurn = hearFigure(dialogue, understood.meaning, understood.slots);
  if (turn.kind !== 'asks') throw new Error(`"${words}" came to ${turn.kind}.`);
  const { notices, question } = figurePrompt(turn.dialogue, JOB);
  return {
    said: sayText([...notices, ...question]),
    isTaken: turn.dialogue.pending !== undefined || turn.dialogue.values[id] !== undefined,
  };
}

describe('words that cannot be true are questioned aloud with what can be, and nothing of them is kept', () => {
  it.each<[InputId, string, string]>([
    ['baleLength', 'four hundred inches', 'That cannot be.'],
    ['baleLength', 'zero inches', 'That cannot be.'],
    ['baleLength', 'three thousand meters', 'That cannot be.'],
    ['baleLength', 'minus thirty six inches', 'A number below zero cannot be.'],
    ['baleLength', 'half past six inches', 'That number was not clear.'],
    ['baleLength', 'thirty six pounds', 'Say the number, then the unit.'],
    ['baleLength', 'thirty six', 'Say the number, then the unit.'],
    ['baleWeight', 'minus fifty pounds', 'A number below zero cannot be.'],
    ['baleWeight', 'nine thousand kilos', 'That cannot be.'],
    ['knotStrength', 'two pounds', 'That cannot be.'],
    ['runnage', 'ten thousand feet to the pound', 'That cannot be.'],
    ['strokesPerMinute', 'zero', 'That cannot be.'],
    ['strokesPerMinute', 'minus eighty', 'A number below zero cannot be.'],
    ['strokesPerMinute', 'eighty ninety', 'That number was not clear.'],
    ['balls', 'one', 'That cannot be.'],
    ['teeth', 'zero', 'That cannot be.'],
    ['tighterShare', 'twenty', 'That cannot be.'],
    ['today', 'february thirtieth', 'That cannot be.'],
    ['today', 'ten pounds', 'Say the month, then the day: June tenth.'],
  ])('%s: "%s"', (id, words, wrong) => {
    const { said, isTaken } = answerTo(id, words);
    expect(said).toContain(wrong);
    expect(said).toContain('It has to be');
    expect(isTaken).toBe(false);
  });

  it('the span is in the units of whoever asks', () => {
    const { dialogue } = beginFigure('figure.ballLength', {}, 'metric') as Extract<
      FigureTurn,
      { kind: 'asks' }
    >;
    expect(sayText(figurePrompt(dialogue, JOB).brief)).toContain(
      'fifty to two thousand metres to the kilogram',
    );
    // 50 and 2000 m/kg at 1.48816 ft/lb each (NIST Special Publication 811), rounded so that nothing outside is let in.
    expect(sayText(figurePrompt(asking('runnage'), JOB).brief)).toContain(
      'seventy-five to two thousand nine hundred seventy-six feet to the pound',
    );
  });

  it.each<[string, string]>([
    ['zero out of zero', 'It takes at least one bale.'],
    ['ten out of two', 'There cannot be more misses than bales.'],
    ['minus two out of ten', 'A number below zero cannot be.'],
    ['two ten', 'Say it like this: two out of ten.'],
  ])('a count of misses: "%s"', (words, wrong) => {
    const { said, isTaken } = answerTo('missCount', words);
    expect(said).toContain(wrong);
    expect(said).toContain('two out of ten');
    expect(isTaken).toBe(false);
  });

  it.each<[InputId, string]>([
    ['baleLength', 'thirty six inches'],
    ['baleLength', 'nine hundred millimeters'],
    ['labelLength', 'nine thousand feet'],
    ['labelLength', 'two thousand seven hundred meters'],
    ['runnage', 'four hundred meters to the kilo'],
    ['knotStrength', 'fifty kilos'],
    ['today', 'june tenth'],
    ['cleanTies', 'zero'],
  ])('while %s: "%s" is read back', (id, words) => {
    const { said, isTaken } = answerTo(id, words);
    expect(isTaken).toBe(true);
    expect(said).toContain('Is that right?');
  });
});

describe('a measured check', () => {
  it.each<[string, string]>([
    ['minus forty pounds', 'A number below zero cannot be.'],
    ['half past six pounds', 'That number was not clear.'],
    ['forty inches', 'Say the number, then the unit.'],
  ])('answers "%s" with what is wrong and what it should be', (words, wrong) => {
    const { prompt } = jobAtHolderPull();
    const understood = understand(words, prompt.expecting);
    const say = understood.outcome === 'refused' ? [understood.sentence ?? '', ...(prompt.span ?? [])] : [];
    expect(sayText(say)).toBe(`${wrong} It should be one to two hundred pounds of pull`);
    expect(unspeakable(say)).toEqual([]);
  });

  it('says what it should be in the unit that was said', () => {
    const job = jobAtHolderPull().answer('value.measured', { measurement: { amount: 4000, unit: 'newton' } });
    // 1 to 200 lbf are 4.448 to 889.6 N (NIST Special Publication 811), rounded so that nothing outside is let in.
    expect(sayText(job.prompt.notices)).toContain(
      'It should be four point four five to eight hundred eighty-nine newtons',
    );
    expect(unspeakable(job.prompt.notices)).toEqual([]);
  });

  it('questions four thousand pounds and stores nothing', () => {
    const job = jobAtHolderPull();
    const { answers } = job.context;
    job.answer('value.measured', { measurement: { amount: 4000, unit: 'poundForce' } });
    expect(sayText(job.prompt.notices)).toContain('It should be one to two hundred pounds of pull');
    expect(job.context.answers).toEqual(answers);
    expect(job.context.pending).toBeUndefined();
  });
});
