import { describe, expect, it } from 'vitest';
import { sayMeasure, sayOutOf } from '../../../grammar/say.ts';
import { asRead } from '../../../src/screens/as-read.ts';
import { fractionText } from '../../../src/screens/fraction-text.ts';
import { partsOf } from '../../../src/screens/question-pane.tsx';

describe('what is spoken, as it is read', () => {
  it('closes a value before the sentence that follows it', () => {
    expect(asRead([...sayMeasure(25, 'poundForce'), 'Is that right?'])).toBe(
      'Twenty-five pounds of pull. Is that right?',
    );
    expect(asRead([...sayOutOf(2, 10, 'bale'), 'Is that right?'])).toBe(
      'Two out of ten bales. Is that right?',
    );
  });

  it('closes a value before a sentence that begins with "I"', () => {
    expect(asRead([...sayMeasure(3, 'inch'), 'I take it that all strokes add the same.'])).toBe(
      'Three inches. I take it that all strokes add the same.',
    );
  });

  it('leaves sentences that close themselves alone', () => {
    expect(asRead(['Lockout is off.', 'Someone is at the tractor.'])).toBe(
      'Lockout is off. Someone is at the tractor.',
    );
    expect(asRead(['The likely cause: a crack.', 'I am', 'sixty', 'percent', 'sure.'])).toBe(
      'The likely cause: a crack. I am sixty percent sure.',
    );
    expect(asRead([])).toBe('');
  });
});

describe('a question with something to do first', () => {
  it('is set apart from it', () => {
    expect(
      partsOf({
        state: 'job.inquiry.x',
        question: ['Pull.', 'Slips, or holds?'],
        brief: ['Slips, or holds?'],
      }),
    ).toEqual({
      before: 'Pull.',
      question: 'Slips, or holds?',
    });
  });

  it('stands whole where its short form is other words, or the same', () => {
    expect(partsOf({ state: 'job.safety.x', question: ['Shut it down.'], brief: ['Is it shut?'] })).toEqual({
      before: '',
      question: 'Shut it down.',
    });
    expect(partsOf({ state: 'job.safety.x', question: ['Shut it down.'], brief: ['Shut it down.'] })).toEqual(
      {
        before: '',
        question: 'Shut it down.',
      },
    );
  });
});

describe('a step of a remedy', () => {
  it('comes after what was found', () => {
    const question = ['The likely cause: a crack.', 'I am', 'sixty', 'percent', 'sure.', 'Fit a new spring.'];
    expect(partsOf({ state: 'job.inquiry.remedy.atLockout.admitted', question, brief: question })).toEqual({
      before: 'The likely cause: a crack. I am sixty percent sure.',
      question: 'Fit a new spring.',
    });
  });
});

describe('an amount as it is written', () => {
  it.each([
    [{ amount: 25, unit: 'poundForce' }, '25'],
    [{ amount: 0.1875, unit: 'inch' }, '3/16'],
    [{ amount: 1.75, unit: 'turn' }, '1 3/4'],
    [{ amount: 1.3, unit: 'inch' }, '1.3'],
    [{ amount: 4.5, unit: 'millimetre' }, '4.5'],
    [{ amount: 0.03125, unit: 'inch' }, '1/32'],
  ] as const)('%j is %s', (measurement, text) => {
    expect(fractionText(measurement)).toBe(text);
  });
});
