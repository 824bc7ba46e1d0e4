import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { graphToken, UNKNOWN_WORD } from '../../grammar/compile.ts';
import { activeMeanings, type Expecting } from '../../grammar/expecting.ts';
import { allPhrases, type Phrase, phrasesFor, riskOf } from '../../grammar/lexicon.ts';
import { READING_LINES } from '../../grammar/reading.ts';
import { understand } from '../../grammar/understand.ts';
import { INQUIRY_STATES } from './states.ts';

const anyState = fc.constantFrom(...INQUIRY_STATES).map(([, expecting]) => expecting);

/** A state and one phrase it listens for. */
const anyAsked = anyState.chain((expecting) =>
  fc.tuple(fc.constant(expecting), fc.constantFrom(...activeMeanings(expecting).flatMap(phrasesFor))),
);

const keyStep: Expecting = { meanings: ['lockout.keyInPocket'] };

describe('what is heard', () => {
  test('is understood as what was meant, as graph words or as plain ones', () => {
    fc.assert(
      fc.property(anyAsked, ([expecting, { words, meaning, side, part }]) => {
        for (const heard of [words, graphToken(words), `  ${words} `]) {
          expect(understand(heard, expecting)).toEqual({
            outcome: 'understood',
            meaning,
            slots: riskOf(meaning) === 'void' ? {} : { ...(side ? { side } : {}), ...(part ? { part } : {}) },
            words,
          });
        }
      }),
    );
  });

  test('is refused where the state does not listen for it', () => {
    const deaf: Expecting = { meanings: [] };
    const elsewhere = allPhrases().filter(
      ({ words }) =>
        !activeMeanings(deaf)
          .flatMap(phrasesFor)
          .some((phrase) => words.includes(phrase.words)),
    );
    fc.assert(
      fc.property(fc.constantFrom(...elsewhere), ({ words }) => {
        expect(understand(words, deaf)).toEqual({ outcome: 'refused', reason: 'otherTalk', words });
      }),
    );
  });

  test('is refused on little evidence, unless it voids', () => {
    fc.assert(
      fc.property(
        anyAsked,
        fc.double({ min: 0, max: 0.49, noNaN: true }),
        ([expecting, { words, meaning }], margin) => {
          const { outcome } = understand(words, expecting, margin);
          expect(outcome).toBe(riskOf(meaning) === 'void' ? 'understood' : 'refused');
        },
      ),
    );
  });

  test('voids lightly only where there is a lockout to void, and stops lightly everywhere', () => {
    const voids = ([, { meaning }]: readonly [Expecting, Phrase]) => riskOf(meaning) === 'void';
    fc.assert(
      fc.property(anyAsked.filter(voids), ([expecting, { words, meaning }]) => {
        const nothingToVoid = { ...expecting, nothingToVoid: true };
        expect(understand(words, nothingToVoid)).toMatchObject({ outcome: 'understood', meaning });
        for (const [heard, margin] of [
          [words, 0.3],
          [`${UNKNOWN_WORD} ${words}`, 1],
        ] as const) {
          expect(understand(heard, expecting, margin)).toMatchObject({ outcome: 'understood', meaning });
          const { outcome } = understand(heard, nothingToVoid, margin);
          expect(outcome).toBe(meaning === 'stop' ? 'understood' : 'refused');
        }
      }),
    );
  });

  test('is nothing where there was only silence', () => {
    expect(understand('  ', keyStep)).toEqual({ outcome: 'refused', reason: 'nothing', words: '' });
  });

  test('is refused with other words around it, unless it voids', () => {
    const unsafe = ([, { meaning }]: readonly [Expecting, Phrase]) => riskOf(meaning) !== 'void';
    fc.assert(
      fc.property(anyAsked.filter(unsafe), ([expecting, { words }]) => {
        expect(understand(`${UNKNOWN_WORD} ${words}`, expecting).outcome).not.toBe('understood');
        expect(understand(`${words} ${UNKNOWN_WORD}`, expecting).outcome).not.toBe('understood');
      }),
    );
  });

  test('never turns into its opposite when something is said before it', () => {
    expect(understand('maybe the key is in my pocket', keyStep).outcome).toBe('refused');
    expect(understand("no it's not the key is in my pocket", keyStep).outcome).toBe('ambiguous');
  });

  test('voids from the middle of other talk, but not where it is denied', () => {
    expect(understand(`${UNKNOWN_WORD} the engine started ${UNKNOWN_WORD}`, keyStep)).toMatchObject({
      outcome: 'understood',
      meaning: 'void.engineHeard',
    });
    expect(understand('never the engine started', keyStep).outcome).not.toBe('understood');
  });

  test('is a question back where two answers were said', () => {
    const expecting: Expecting = { meanings: ['finding.cracked', 'finding.sound'] };
    expect(understand("it's cracked it looks sound", expecting)).toMatchObject({
      outcome: 'ambiguous',
      candidates: ['finding.cracked', 'finding.sound'],
    });
  });

  test('is one answer where it was said twice', () => {
    const expecting: Expecting = { meanings: ['finding.cracked', 'finding.sound'] };
    expect(understand("it's cracked it's broken", expecting)).toMatchObject({ meaning: 'finding.cracked' });
  });

  test('never clears a lockout step from any mixture of the words the recogniser knows', () => {
    const graphWord = fc.constantFrom(...activeMeanings(keyStep).flatMap(phrasesFor), undefined);
    fc.assert(
      fc.property(fc.array(graphWord, { minLength: 1, maxLength: 5 }), (phrases) => {
        const heard = phrases.map((phrase) => (phrase ? graphToken(phrase.words) : UNKNOWN_WORD)).join(' ');
        const understood = understand(heard, keyStep);
        if (understood.outcome === 'understood' && riskOf(understood.meaning) === 'confirm') {
          expect(phrases.every((phrase) => phrase?.meaning === understood.meaning)).toBe(true);
        }
      }),
    );
  });
});

describe('a number', () => {
  const pull: Expecting = {
    meanings: ['finding.holdsEven'],
    value: { kind: 'measurement', dimension: 'force' },
  };

  test('is understood where one is asked for', () => {
    expect(understand('forty two pounds', pull)).toMatchObject({
      meaning: 'value.measured',
      slots: { measurement: { amount: 42, unit: 'poundForce' } },
    });
    expect(understand('two out of ten', { meanings: [], value: { kind: 'missCount' } })).toMatchObject({
      meaning: 'value.missRate',
      slots: { missCount: { misses: 2, bales: 10 } },
    });
  });

  test.each([
    ['forty sixty two pounds', READING_LINES.numberUnclear],
    ['forty two', READING_LINES.unitMissing],
    ['forty two inches', READING_LINES.unitMissing],
    ['pounds', READING_LINES.numberUnclear],
    ['minus forty pounds', READING_LINES.belowZero],
  ])('"%s" is refused with what is wrong with it', (words, sentence) => {
    expect(understand(words, pull)).toEqual({ outcome: 'refused', reason: 'value', sentence, words });
  });

  test('is a day where a day is asked for', () => {
    const day: Expecting = { meanings: [], value: { kind: 'day' } };
    expect(understand('june_tenth', day)).toMatchObject({
      meaning: 'value.day',
      slots: { day: { month: 6, day: 10 } },
    });
    expect(understand('ten pounds', day)).toMatchObject({
      outcome: 'refused',
      sentence: READING_LINES.dayUnclear,
    });
  });

  test('is other talk where none is asked for, or where the recogniser knew no word of it', () => {
    expect(understand('forty two pounds', keyStep)).toMatchObject({ reason: 'otherTalk' });
    expect(understand(`${UNKNOWN_WORD} ${UNKNOWN_WORD}`, pull)).toMatchObject({ reason: 'otherTalk' });
  });
});
