import { describe, expect, it } from 'vitest';
import { CLEAR_UNKNOWN_WORD, clearFromDb, DECOY_WORD } from '../../../audio/command-model/decode-protocol.ts';
import { prepareUtterance } from '../../../audio/command-model/listening/prepare-utterance.ts';
import { listFor, plainlyNamed } from '../../../audio/ears/utterance-reader.ts';
import { mixedAt, voiceLike, whiteNoise } from './test-sounds.ts';

const list = ['both_knotters', '[unk]'];

describe('what an utterance is decoded with', () => {
  it('is stricter where the speech is clear, and only there', () => {
    expect(listFor(list, clearFromDb)).toEqual([...list, DECOY_WORD, CLEAR_UNKNOWN_WORD]);
    expect(listFor(list, clearFromDb - 0.1)).toEqual([...list, DECOY_WORD]);
  });

  it('follows the speech over the room as it is', () => {
    const rms = 0.01;
    for (const db of [5, 10, 20, 30]) {
      const voice = voiceLike(800, rms * 10 ** (db / 20));
      const raw = mixedAt(whiteNoise(64_000, rms, 4), voice, 40_000);
      const { speechOverRoomDb } = prepareUtterance(raw, 40_000, 52_800);
      // The model's bands weigh white noise more than a voice.
      expect(speechOverRoomDb).toBeGreaterThan(db - 9);
      expect(speechOverRoomDb).toBeLessThan(db + 3);
    }
  });

  it('names unknown speech by one name', () => {
    const at = { startMs: 0, endMs: 500, confidence: 1 };
    expect(
      plainlyNamed([
        { word: CLEAR_UNKNOWN_WORD, ...at },
        { word: DECOY_WORD, ...at },
        { word: 'stop', ...at },
      ]),
    ).toEqual([
      { word: '[unk]', ...at },
      { word: '[unk]', ...at },
      { word: 'stop', ...at },
    ]);
  });
});
