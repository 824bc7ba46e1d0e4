import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Prompt } from '../../../flows/prompt.ts';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { MEANING_IDS, type MeaningId, POINTING_MEANINGS, riskOf } from '../../../grammar/lexicon.ts';
import { understand } from '../../../grammar/understand.ts';
import { answersShown, pointedAt, saidOfAnswers } from '../../../src/session/answers-shown.ts';
import { TestJob } from '../../flows/talk.ts';

const ANSWERS = MEANING_IDS.filter(
  (meaning) => riskOf(meaning) === 'answer' && !meaning.startsWith('value.'),
);
const HELD = MEANING_IDS.filter((meaning) => riskOf(meaning) === 'confirm' || riskOf(meaning) === 'void');

function shown(meanings: readonly MeaningId[], page = 0, value?: Prompt['expecting']['value']) {
  const { prompt } = new TestJob();
  const expecting = { meanings, ...(value ? { value } : {}) };
  const choices = meanings.map((meaning) => ({ meaning, label: meaning }));
  return answersShown({ ...prompt, expecting }, choices, page);
}

describe('pointing at an answer', () => {
  it('takes the n-th on the screen, on every page, whether or not a number can be tapped in first', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...ANSWERS), { minLength: 2, maxLength: 12 }),
        fc.nat(5),
        fc.boolean(),
        (meanings, page, hasValue) => {
          const answers = shown(meanings, page, hasValue ? { kind: 'missCount' } : undefined);
          const onPage = answers.shown.filter((answer) => answer !== 'number');
          const taken = POINTING_MEANINGS.map((pointing) => pointedAt(pointing, answers));
          // One answer alone needs no number.
          const expected = onPage.length > 1 ? onPage.map(({ meaning }) => meaning) : [];
          expect(taken.filter((meaning) => meaning !== undefined)).toEqual(expected);
          expect(saidOfAnswers(answers).filter((said) => said.startsWith('point.'))).toEqual(
            POINTING_MEANINGS.slice(0, expected.length),
          );
        },
      ),
    );
  });

  it('never reaches what only its own words may say', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...HELD),
        fc.uniqueArray(fc.constantFrom(...ANSWERS), { maxLength: 3 }),
        (held, others) => {
          const answers = shown([held, ...others]);
          expect(POINTING_MEANINGS.map((pointing) => pointedAt(pointing, answers))).not.toContain(held);
          expect(saidOfAnswers(answers)).toEqual([]);
        },
      ),
    );
  });

  it('is no way to say yes', () => {
    expect(saidOfAnswers(shown(['yes', 'no']))).toEqual([]);
  });

  it('is understood only where answers are shown', () => {
    const { expecting } = new TestJob().prompt;
    expect(activeMeanings(expecting).filter((meaning) => meaning.startsWith('point.'))).toEqual([]);
    expect(understand('it_looks_like_the_second_one', expecting).outcome).toBe('refused');
    const onScreen = saidOfAnswers(shown(['end.square', 'end.pinched', 'end.torn', 'end.curled']));
    expect(understand('it_looks_like_the_second_one', { ...expecting, onScreen })).toMatchObject({
      outcome: 'understood',
      meaning: 'point.second',
    });
  });

  it('asks for the other answers only where there are some', () => {
    expect(saidOfAnswers(shown(ANSWERS.slice(0, 4)))).not.toContain('answers.more');
    expect(saidOfAnswers(shown(ANSWERS.slice(0, 5)))).toContain('answers.more');
  });
});
