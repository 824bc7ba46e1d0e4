import { describe, expect, it } from 'vitest';
import type { HeardEvent } from '../../../flows/heard.ts';
import { type HearingChoice, policyFor, sayHearing } from '../../../flows/hearing-policy.ts';
import { countPrompt } from '../../../flows/miss-log/saying.ts';
import { tallyOf } from '../../../flows/miss-log/tally.ts';
import type { Prompt } from '../../../flows/prompt.ts';
import { HEARING_GRADES, type HearingGrade } from '../../../grammar/hearing-grade.ts';
import { MEANING_IDS, type MeaningId, riskOf, VOID_MEANINGS } from '../../../grammar/lexicon.ts';
import type { Slots } from '../../../grammar/understand.ts';
import { mustBeAccepted, openHearingDesk } from '../../../src/session/hearing-desk.ts';
import { TestJob } from '../../flows/talk.ts';

const opening = new TestJob().prompt;
const accepting: Prompt = {
  ...opening,
  state: 'job.inquiry.knotHangsOn.bolt.accepting',
  expecting: { meanings: ['yes', 'no'] },
};

function spoken(
  type: MeaningId,
  slots: Slots = {},
  margin = 0.9,
): { event: HeardEvent; trace: { heardText: string } } {
  return {
    event: { type, slots, channel: { by: 'voice', margin, snrDb: 12 } },
    trace: { heardText: type },
  };
}

function touched(type: MeaningId): { event: HeardEvent } {
  return { event: { type, slots: {}, channel: { by: 'touch' } } };
}

function deskAt(grade: HearingGrade, choice: HearingChoice = 'automatic') {
  const desk = openHearingDesk(() => choice);
  desk.hear(grade);
  desk.toSay();
  return desk;
}

describe('a spoken answer where it is hard to hear', () => {
  it('is read back and goes on only when it is accepted, as it was said', () => {
    const desk = deskAt('poor');
    const answer = spoken('symptom.heldStrandLost', { side: 'left' });
    expect(desk.take(answer, opening)).toEqual({ kind: 'asks' });
    const prompt = desk.promptOver(opening);
    expect(prompt.question.join(' ')).toMatch(/^I heard: .* left.* Is that right\?$/);
    expect(prompt.expecting.meanings).toEqual(['yes', 'no']);
    expect(desk.take(spoken('yes'), opening)).toEqual({ kind: 'goesOn', ...answer });
    expect(desk.promptOver(opening)).toBe(opening);
  });

  it('is accepted by touch as well', () => {
    const desk = deskAt('poor');
    const answer = spoken('symptom.heldStrandLost');
    desk.take(answer, opening);
    expect(desk.take(touched('yes'), opening)).toEqual({ kind: 'goesOn', ...answer });
  });

  it.each(['no', 'goBack'] as const)('is dropped by %s, and the question stands again', (meaning) => {
    const desk = deskAt('poor');
    desk.take(spoken('symptom.heldStrandLost'), opening);
    expect(desk.take(spoken(meaning), opening)).toEqual({ kind: 'asks' });
    expect(desk.promptOver(opening)).toBe(opening);
  });

  it('is replaced by another answer, which is read back in its turn', () => {
    const desk = deskAt('poor');
    desk.take(spoken('symptom.heldStrandLost'), opening);
    expect(desk.take(spoken('notSure'), opening)).toEqual({ kind: 'asks' });
    expect(desk.take(spoken('yes'), opening)).toMatchObject({ event: { type: 'notSure' } });
  });

  it.each([...VOID_MEANINGS, 'stop'] as const)('does not hold up %s', (meaning) => {
    const desk = deskAt('poor');
    desk.take(spoken('symptom.heldStrandLost'), opening);
    expect(desk.take(spoken(meaning), opening)).toMatchObject({ event: { type: meaning } });
    expect(desk.promptOver(opening)).toBe(opening);
  });

  it('does not get in the way of a button, which is the answer', () => {
    const desk = deskAt('poor');
    expect(desk.take(touched('notSure'), opening)).toMatchObject({ kind: 'goesOn' });
    desk.take(spoken('symptom.heldStrandLost'), opening);
    expect(desk.take(touched('notSure'), opening)).toMatchObject({ kind: 'goesOn' });
    expect(desk.promptOver(opening)).toBe(opening);
  });

  it('waits while the question is asked again', () => {
    const desk = deskAt('poor');
    desk.take(spoken('symptom.heldStrandLost'), opening);
    expect(desk.take(spoken('sayAgain'), opening)).toMatchObject({ kind: 'goesOn' });
    expect(desk.promptOver(opening).state).toBe('accept.answer');
  });

  it('is not held a second time where it is an acceptance itself', () => {
    const desk = deskAt('poor');
    expect(desk.take(spoken('yes'), accepting)).toMatchObject({ kind: 'goesOn' });
  });

  it('is dropped when something happened at the machine', () => {
    const desk = deskAt('poor');
    desk.take(spoken('symptom.heldStrandLost'), opening);
    desk.end();
    expect(desk.promptOver(opening)).toBe(opening);
  });

  it('is held by choice where it is quiet, too', () => {
    expect(deskAt('good', 'alwaysAskBack').take(spoken('symptom.heldStrandLost'), opening)).toEqual({
      kind: 'asks',
    });
    expect(deskAt('good').take(spoken('symptom.heldStrandLost'), opening)).toMatchObject({ kind: 'goesOn' });
  });

  it('is held where it is quiet, too, when it was not surely heard, and accepted by a yes that was not', () => {
    const desk = deskAt('good');
    const near = spoken('symptom.heldStrandLost', {}, 0.7);
    expect(desk.take(near, opening)).toEqual({ kind: 'asks' });
    expect(desk.promptOver(opening).question.join(' ')).toMatch(/^I heard: .* Is that right\?$/);
    expect(desk.take(spoken('yes', {}, 0.6), opening)).toEqual({ kind: 'goesOn', ...near });
  });

  it('leaves the question standing on a word to find the way by that was not surely heard', () => {
    for (const type of ['goBack', 'sayAgain', 'why'] as const) {
      expect(deskAt('good').take(spoken(type, {}, 0.7), opening)).toEqual({ kind: 'asks' });
      expect(deskAt('good').take(spoken(type), opening)).toMatchObject({ kind: 'goesOn' });
      expect(deskAt('good').take(touched(type), opening)).toMatchObject({ kind: 'goesOn' });
    }
    expect(deskAt('good').take(spoken('stop', {}, 0.1), opening)).toMatchObject({ kind: 'goesOn' });
  });

  it('holds a count of bales, which nobody else reads back', () => {
    const desk = deskAt('poor');
    const counting = countPrompt(tallyOf([]), [], opening);
    expect(desk.take(spoken('value.count', { count: 12 }), counting)).toEqual({ kind: 'asks' });
    expect(desk.promptOver(counting).question.join(' ')).toBe('I heard: twelve Is that right?');
  });

  it('holds answers and nothing else: confirmations and voids never', () => {
    for (const type of MEANING_IDS) {
      const event = spoken(type).event;
      const isHeld = mustBeAccepted(
        event,
        { ...opening, expecting: { meanings: [type] } },
        policyFor('poor', 'automatic'),
      );
      const isNumber = type.startsWith('value.');
      expect(isHeld, type).toBe(!isNumber && (riskOf(type) === 'answer' || riskOf(type) === 'navigation'));
      expect(mustBeAccepted(touched(type).event, opening, policyFor('poor', 'automatic'))).toBe(false);
    }
  });
});

describe('what is said of the hearing', () => {
  it('is said once for every change, and before anything else', () => {
    for (const from of HEARING_GRADES)
      for (const to of HEARING_GRADES) {
        const desk = deskAt(from);
        desk.hear(to);
        expect(desk.toSay()).toEqual(sayHearing(from, to, 'automatic'));
        expect(desk.grade.value).toBe(to);
        expect(desk.toSay()).toEqual([]);
        expect(desk.hear(to)).toBe(false);
      }
  });

  it('comes at once when it is worse or when the voice is back, and waits for the next question when it is better', () => {
    expect(deskAt('good').hear('fair')).toBe(true);
    expect(deskAt('fair').hear('too loud')).toBe(true);
    expect(deskAt('too loud').hear('poor')).toBe(true);
    expect(deskAt('poor').hear('fair')).toBe(false);
    expect(deskAt('fair').hear('good')).toBe(false);
  });

  it('holds the stricter rules until the better ones were said', () => {
    const desk = deskAt('poor');
    desk.hear('fair');
    expect(desk.policy()).toEqual(policyFor('poor', 'automatic'));
    expect(desk.take(spoken('symptom.heldStrandLost'), opening)).toEqual({ kind: 'asks' });
    desk.toSay();
    expect(desk.policy()).toEqual(policyFor('fair', 'automatic'));
  });

  it('is nothing when it was better for a moment nobody was told of', () => {
    const desk = deskAt('poor');
    desk.hear('fair');
    desk.hear('poor');
    expect(desk.toSay()).toEqual([]);
  });
});
