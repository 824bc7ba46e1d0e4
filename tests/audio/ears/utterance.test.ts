import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DecodedWord } from '../../../audio/ears/heard-words.ts';
import { marginOf, wordsWithin } from '../../../audio/ears/utterance.ts';

const speech = { startMs: 3_400, endMs: 4_400 };

function word(text: string, startMs: number, endMs: number, confidence = 1): DecodedWord {
  return { word: text, startMs, endMs, confidence };
}

describe('the words of an utterance', () => {
  it('are those within the speech; what hangs on noise around it is dropped', () => {
    const said = word('left_hand_side', 3_350, 4_390);
    const words = [word('off', 0, 3_100), said, word('stop', 4_450, 4_800)];
    expect(wordsWithin(words, speech)).toEqual([said]);
  });

  it('do not include a hiss held from the pre-roll into the speech', () => {
    expect(wordsWithin([word('off', 200, 3_900)], speech)).toEqual([]);
  });

  it('do not include a word most of which lies after the speech', () => {
    expect(wordsWithin([word('stop', 4_300, 4_900)], speech)).toEqual([]);
  });

  it('keep other talk beside the phrase, but no breath', () => {
    const talk = word('[unk]', 3_500, 3_900);
    expect(wordsWithin([talk, word('[unk]', 4_000, 4_100)], speech)).toEqual([talk]);
  });
});

describe('the margin', () => {
  it('is whole for a sure phrase that fills the speech', () => {
    expect(marginOf([word('both_knotters', 3_400, 4_400)], speech)).toBe(1);
  });

  it('is half for one that fills half of it, once the doubtful edges of the speech are left out', () => {
    expect(marginOf([word('both_knotters', 3_400, 3_800)], speech)).toBeCloseTo(0.5, 9);
  });

  it('is not less for a short word because a breath was taken for speech beside it', () => {
    expect(marginOf([word('yes', 3_500, 3_750)], { startMs: 3_400, endMs: 3_850 })).toBe(1);
  });

  it('is at most seven tenths for what was said much more faintly than before, and as it was where it is less', () => {
    const sure = word('both_knotters', 3_400, 4_400);
    expect(marginOf([sure], speech, true)).toBe(0.7);
    expect(marginOf([{ ...sure, confidence: 0.4 }], speech, true)).toBeCloseTo(0.4, 9);
  });

  it('is none for nothing and for other talk', () => {
    expect(marginOf([], speech)).toBe(0);
    expect(marginOf([word('[unk]', 3_400, 4_400)], speech)).toBe(0);
  });

  it('lies between 0 and 1 and never rises when a word becomes less sure', () => {
    const time = fc.integer({ min: 3_000, max: 5_000 });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(time, fc.integer({ min: 1, max: 2_000 }), share, share, (startMs, lengthMs, a, b) => {
        const at = (sure: number): number => marginOf([word('x', startMs, startMs + lengthMs, sure)], speech);
        const less = at(Math.min(a, b));
        const more = at(Math.max(a, b));
        expect(less).toBeGreaterThanOrEqual(0);
        expect(more).toBeLessThanOrEqual(1);
        expect(less).toBeLessThanOrEqual(more);
      }),
    );
  });
});
