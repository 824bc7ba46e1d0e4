import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ANSWERS_AT_ONCE, answerPage } from '../../../src/session/answer-pages.ts';

describe('answers, a few at a time', () => {
  it('shows every answer once on the way round, in order, never more than fit', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer(), { maxLength: 30 }),
        fc.integer({ min: -3, max: 3 }),
        (answers, turns) => {
          const { pages } = answerPage(answers, 0);
          const seen = Array.from(
            { length: pages },
            (_, page) => answerPage(answers, page + turns * pages).shown,
          );
          expect(seen.flat()).toEqual(answers);
          const room = pages === 1 ? ANSWERS_AT_ONCE : ANSWERS_AT_ONCE - 1;
          for (const shown of seen) expect(shown.length).toBeLessThanOrEqual(room);
        },
      ),
    );
  });

  it('needs no second step for what fits at once', () => {
    expect(answerPage(['a', 'b', 'c', 'd'], 0)).toEqual({ shown: ['a', 'b', 'c', 'd'], pages: 1 });
    expect(answerPage(['a', 'b', 'c', 'd', 'e'], 0)).toEqual({ shown: ['a', 'b', 'c'], pages: 2 });
  });
});
