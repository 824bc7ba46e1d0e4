import { describe, expect, it } from 'vitest';
import { CLEAR_UNKNOWN_WORD, clearFromDb, DECOY_WORD } from '../../../audio/command-model/decode-protocol.ts';
import { prepareUtterance } from '../../../audio/command-model/listening/prepare-utterance.ts';
import type { Recogniser } from '../../../audio/ears/recogniser.ts';
import { listFor, plainlyNamed, readUtterance } from '../../../audio/ears/utterance-reader.ts';
import { SECOND_LOOK } from '../../../grammar/compile.ts';
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

describe('a phrase that a lockout hangs on', () => {
  const [step = ''] = SECOND_LOOK.at;
  const span = { startMs: 450, endMs: 1_250 };

  /** A recogniser that hears the first phrase of the list it is given, or the second amongst everything. */
  async function heardBy(asked: string, amongstEverything: string): Promise<readonly [string, number]> {
    let looks = 0;
    const recogniser: Recogniser = {
      model: { graph: 'phrases' } as Recogniser['model'],
      loadMs: 0,
      unknownIn: () => [],
      open(list) {
        looks += 1;
        const word = list.length > SECOND_LOOK.at.size + 2 ? amongstEverything : asked;
        const words = [{ word, ...span, confidence: 1 }];
        return {
          ok: true,
          session: { decode: () => Promise.resolve({ ok: true, words }), dispose: () => {} },
        };
      },
      close: () => {},
    };
    const sound = mixedAt(whiteNoise(64_000, 0.001, 4), voiceLike(800, 0.1), 40_000);
    const read = await readUtterance(recogniser, [asked, '[unk]'], sound, 40_000, 52_800)?.reading;
    return [read?.words.map(({ word }) => word).join(' ') ?? 'nothing', looks];
  }

  it('is taken where it is heard again amongst all that can be said', async () => {
    expect(await heardBy(step, step)).toEqual([step, 2]);
  });

  it('is unknown speech where something else is nearer', async () => {
    expect(await heardBy(step, 'both_knotters')).toEqual(['[unk]', 2]);
    expect(await heardBy(step, '[unk]')).toEqual(['[unk]', 2]);
  });

  it('is the only kind that is looked at twice', async () => {
    expect(await heardBy('both_knotters', step)).toEqual(['both_knotters', 1]);
  });
});
