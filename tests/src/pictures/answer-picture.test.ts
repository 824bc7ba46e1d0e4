import { describe, expect, it } from 'vitest';
import { EVIDENCE } from '../../../flows/diagnosis/evidence.ts';
import { MEANING_IDS } from '../../../grammar/lexicon.ts';
import { answerPicture } from '../../../src/pictures/answer-picture.tsx';

describe('pictures of answers', () => {
  it('are there for every answer to a question about evidence', () => {
    const answers = Object.values(EVIDENCE).flatMap(({ answers: each }) =>
      each.flatMap(({ meanings }) => meanings),
    );
    expect(answers.length).toBeGreaterThan(20);
    expect(answers.filter((meaning) => !answerPicture(meaning))).toEqual([]);
  });

  it('are left out where words do it better', () => {
    expect(answerPicture('yes')).toBeUndefined();
    const drawn = MEANING_IDS.filter((meaning) => answerPicture(meaning));
    expect(drawn.every((meaning) => /^(knot|end|which|next|when|needles)\./.test(meaning))).toBe(true);
  });
});
