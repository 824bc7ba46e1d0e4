import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimalAutomaton } from '../../../audio/command-model/minimal-automaton.ts';

const sequences = fc.uniqueArray(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 6 }), {
  selector: (sequence) => sequence.join(''),
  minLength: 1,
  maxLength: 20,
});

describe('a minimal automaton', () => {
  it('accepts just the sequences it was made from', () => {
    fc.assert(
      fc.property(sequences, (given) => {
        const states = minimalAutomaton(given, (step) => step);
        const accepted: string[] = [];
        const walk = (state: number, soFar: string) => {
          if (states[state]?.accepts) accepted.push(soFar);
          for (const { step, to } of states[state]?.edges ?? []) walk(to, soFar + step);
        };
        walk(states.length - 1, '');
        expect(accepted.sort()).toEqual(given.map((sequence) => sequence.join('')).sort());
      }),
    );
  });

  it('takes steps in another order for the same set', () => {
    const given = ['ab', 'ac', 'bc', 'bb'].map((text) => [...text]);
    expect(minimalAutomaton(given, (step) => step)).toHaveLength(3);
  });

  // Myhill and Nerode: as many states as there are different sets of endings that can follow a beginning.
  it('has no more states than sets of endings', () => {
    fc.assert(
      fc.property(sequences, (given) => {
        const texts = given.map((sequence) => sequence.join(''));
        const beginnings = new Set(texts.flatMap((text) => [...text, ''].map((_, i) => text.slice(0, i))));
        const endings = new Set(
          [...beginnings].map((beginning) =>
            texts
              .filter((text) => text.startsWith(beginning))
              .map((text) => text.slice(beginning.length))
              .sort()
              .join('|'),
          ),
        );
        expect(minimalAutomaton(given, (step) => step).length).toBe(endings.size);
      }),
    );
  });
});
