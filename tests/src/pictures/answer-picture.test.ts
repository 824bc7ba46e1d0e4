import { describe, expect, it } from 'vitest';
import { EVIDENCE } from '../../../flows/diagnosis/evidence.ts';
import { MEANING_IDS } from '../../../grammar/lexicon.ts';
import { answerPicture } from '../../../src/pictures/answer-picture.tsx';

describe('pictures of answers', () => {
  it('are there for every answer about the two ends of a string and about the side', () => {
    for (const question of ['knotPlace', 'endLook', 'whichKnotter'] as const) {
      for (const meaning of EVIDENCE[question].answers.flatMap(({ meanings }) => meanings)) {
        expect(answerPicture(meaning), meaning).toBeDefined();
      }
    }
  });

  it('are left out where words do it better', () => {
    expect(answerPicture('yes')).toBeUndefined();
    const drawn = MEANING_IDS.filter((meaning) => answerPicture(meaning));
    expect(drawn.every((meaning) => /^(knot|end|which)\./.test(meaning))).toBe(true);
  });
});
