import { describe, expect, it } from 'vitest';
import { endsSentence, gapAfterS } from '../../../audio/mouth/joining.ts';
import { sayInventory } from '../../../grammar/say.ts';

describe('joints between fragments', () => {
  it('are as long as their punctuation asks', () => {
    const gaps = ['forty', 'Pull on the left:', 'Is the holder spring cracked?'].map(gapAfterS);
    expect(gaps).toEqual([...gaps].sort((a, b) => a - b));
    expect(new Set(gaps).size).toBe(3);
    expect(gapAfterS('Stop.')).toBe(gapAfterS('Stop!'));
  });

  it('leave no gap inside a value: none of its pieces ends a sentence', () => {
    expect(sayInventory().filter((piece) => endsSentence(piece) || gapAfterS(piece) > 0)).toEqual([]);
  });
});
