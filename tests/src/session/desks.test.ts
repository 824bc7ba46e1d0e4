import { describe, expect, it } from 'vitest';
import type { HeardEvent } from '../../../flows/heard.ts';
import { type CountEntry, MOST_AT_ONCE } from '../../../flows/miss-log/entry.ts';
import { COUNTING_MEANINGS } from '../../../flows/miss-log/saying.ts';
import { tallyOf } from '../../../flows/miss-log/tally.ts';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { FIGURE_MEANINGS, type MeaningId, VOID_MEANINGS } from '../../../grammar/lexicon.ts';
import type { Slots } from '../../../grammar/understand.ts';
import { openCountDesk } from '../../../src/session/count-desk.ts';
import { openFigureDesk } from '../../../src/session/figure-desk.ts';
import { TestJob } from '../../flows/talk.ts';

const job = new TestJob();
const VOIDS: readonly MeaningId[] = [...VOID_MEANINGS, 'stop'];

function said(type: MeaningId, slots: Slots = {}): HeardEvent {
  return { type, slots, channel: { by: 'touch' } };
}

function figureDesk(ofMachine = {}) {
  return openFigureDesk(
    () => tallyOf([]),
    () => [],
    ofMachine,
    () => 'inch',
  );
}

describe('while a figure has the floor', () => {
  it.each(VOIDS)('%s is the job’s at once, ends the figure, and is listened for', (meaning) => {
    const desk = figureDesk();
    desk.take(said('figure.flake'), job.context);
    expect(activeMeanings(desk.promptOver(job.prompt).expecting)).toContain(meaning);
    expect(desk.take(said(meaning), job.context)).toEqual({ kind: 'forTheJob' });
    expect(desk.dialogue.value).toBeUndefined();
    expect(desk.promptOver(job.prompt)).toEqual(job.prompt);
  });

  it('an answer to the job’s question is not taken, and the figure stays', () => {
    const desk = figureDesk();
    desk.take(said('figure.flake'), job.context);
    expect(desk.take(said('symptom.heldStrandLost'), job.context).kind).toBe('notTaken');
    expect(desk.dialogue.value).toBeDefined();
  });

  it('the safety plate goes on showing the job’s state', () => {
    const desk = figureDesk();
    desk.take(said('figure.flake'), job.context);
    expect(desk.promptOver({ ...job.prompt, safety: 'lockedOut' }).safety).toBe('lockedOut');
  });

  it('what is kept of the machine is not asked', () => {
    const desk = figureDesk({ baleLength: 36, strokesPerBale: 12 });
    expect(desk.take(said('figure.flake'), job.context).kind).toBe('answers');
  });

  it('what is kept of the machine and cannot be is asked', () => {
    const desk = figureDesk({ baleLength: 400, strokesPerBale: 12 });
    expect(desk.take(said('figure.flake'), job.context).kind).toBe('asks');
  });
});

describe('with no figure asked', () => {
  it('everything else is the job’s', () => {
    const desk = figureDesk();
    expect(desk.take(said('goBack'), job.context)).toEqual({ kind: 'forTheJob' });
    expect(desk.take(said('yes'), job.context)).toEqual({ kind: 'forTheJob' });
  });

  it.each(FIGURE_MEANINGS)('%s can be asked in every state', (meaning) => {
    expect(activeMeanings(job.prompt.expecting)).toContain(meaning);
    expect(figureDesk().take(said(meaning), job.context).kind).toBe('asks');
  });
});

describe('while bales are counted', () => {
  function counting() {
    const entries: CountEntry[] = [];
    const desk = openCountDesk(() => entries.map((entry) => ({ entry, repairs: 0 })));
    const say = (meaning: MeaningId, slots: Slots = {}) => {
      const turn = desk.take(said(meaning, slots), job.prompt, job.context);
      if (turn.kind === 'counts') {
        entries.push(turn.entry);
        desk.counted();
      }
      return turn;
    };
    say('count.open');
    return { desk, entries, say };
  }

  it.each(VOIDS)('%s is the job’s at once and ends the counting', (meaning) => {
    const { desk, say } = counting();
    expect(activeMeanings(desk.promptOver(job.prompt, job.context).expecting)).toContain(meaning);
    expect(say(meaning)).toEqual({ kind: 'forTheJob', event: said(meaning) });
    expect(desk.promptOver(job.prompt, job.context)).toEqual(job.prompt);
  });

  it('counts by word, by number, and takes the last one back', () => {
    const { desk, say } = counting();
    say('count.good');
    say('count.missLeft');
    say('value.count', { count: 12 });
    say('count.missRight');
    say('goBack');
    expect(desk.tally.value?.bales).toHaveLength(14);
    expect(desk.tally.value?.misses).toEqual({ left: 1, right: 0 });
    expect(desk.promptOver(job.prompt, job.context).question).toEqual([
      'Bales:',
      'fourteen',
      'Missed:',
      'one',
    ]);
  });

  it('a number that is no number of bales is questioned and not kept', () => {
    const { desk, entries, say } = counting();
    expect(say('value.count', { count: MOST_AT_ONCE + 1 }).kind).toBe('asks');
    expect(say('value.count', { count: 0 }).kind).toBe('asks');
    expect(entries).toEqual([]);
    expect(desk.promptOver(job.prompt, job.context).notices.join(' ')).toContain(
      'It has to be one to five hundred bales',
    );
  });

  it('is left by its own phrase, and goes on where it stood', () => {
    const { desk, say } = counting();
    say('count.good');
    expect(say('count.enough').kind).toBe('leaves');
    expect(say('count.good').kind).toBe('forTheJob');
    say('count.open');
    expect(desk.tally.value?.bales).toHaveLength(1);
  });

  it('its words are understood only there', () => {
    for (const meaning of COUNTING_MEANINGS) {
      expect(activeMeanings(job.prompt.expecting)).not.toContain(meaning);
    }
  });
});

describe('counted bales that can answer the job', () => {
  const counted = [
    { entry: { kind: 'good', bales: 58 }, repairs: 0 },
    { entry: { kind: 'miss', side: 'left' }, repairs: 0 },
  ] as const;

  it('are given to it as the number it asks for, by their own phrase alone', () => {
    const desk = openCountDesk(() => counted);
    const prompt = { ...job.prompt, takesCount: 'before' } as const;
    const { context } = job;
    expect(desk.promptOver(prompt, context).expecting.meanings).toContain('count.asBefore');
    expect(desk.take(said('count.asBefore'), prompt, context)).toEqual({
      kind: 'forTheJob',
      event: said('value.missRate', { missCount: { misses: 1, bales: 59 } }),
    });
    expect(desk.take(said('yes'), prompt, context)).toEqual({ kind: 'forTheJob', event: said('yes') });
  });

  it('are no answer where nobody counted', () => {
    const desk = openCountDesk(() => []);
    const prompt = { ...job.prompt, takesCount: 'before' } as const;
    expect(desk.promptOver(prompt, job.context)).toEqual(prompt);
    expect(desk.take(said('count.asBefore'), prompt, job.context)).toEqual({
      kind: 'forTheJob',
      event: said('count.asBefore'),
    });
  });
});

it('the pattern is said as the counting ends, without being asked for', () => {
  const entries = Array.from({ length: 10 }, () => ({
    entry: { kind: 'miss', side: 'left' } as const,
    repairs: 0,
  }));
  const desk = openCountDesk(() => entries);
  desk.take(said('count.open'), job.prompt, job.context);
  const turn = desk.take(said('count.enough'), job.prompt, job.context);
  expect(turn.kind === 'leaves' && turn.say).toContain('Most of the misses are on one side:');
});

it('the counted bales answer a figure that asks for them', () => {
  const counted: CountEntry[] = [
    { kind: 'good', bales: 58 },
    { kind: 'miss', side: 'left' },
    { kind: 'miss', side: 'left' },
  ];
  const desk = openFigureDesk(
    () => tallyOf(counted),
    () => [],
    {},
    () => 'inch',
  );
  const turn = desk.take(said('figure.missRate'), job.context);
  expect(turn.kind === 'answers' && turn.worked.values.missCount).toEqual({ misses: 2, bales: 60 });
});
