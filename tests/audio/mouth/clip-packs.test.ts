import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexText, keptClip, packClips } from '../../../audio/mouth/render/clip-packs.ts';
import type { Clip } from '../../../audio/mouth/render/clip-renderer.ts';
import { missingClips, readVoiceIndex } from '../../../audio/mouth/voice-index.ts';

/** Names that no reader of untrusted JSON takes as keys; no one says them either. */
const UNSAFE_KEYS = ['__proto__', 'prototype', 'constructor'];

const clip: fc.Arbitrary<Clip> = fc.record({
  text: fc.string({ minLength: 1 }).filter((text) => !UNSAFE_KEYS.includes(text)),
  key: fc.stringMatching(/^[0-9a-f]{12}$/),
  mp3: fc.uint8Array({ minLength: 1, maxLength: 40 }),
  speechMs: fc.integer({ min: 1, max: 9000 }),
});
const clips = fc.uniqueArray(clip, { selector: ({ text }) => text, minLength: 1, maxLength: 60 });

describe('packs of clips', () => {
  it('give every clip back byte for byte', () => {
    fc.assert(
      fc.property(clips, (all) => {
        const packed = packClips(all);
        for (const one of all) {
          const kept = keptClip(packed, one.text, one.key);
          expect(kept && { ...kept, mp3: [...kept.mp3] }).toEqual({ ...one, mp3: [...one.mp3] });
        }
      }),
    );
  });

  it('do not depend on the order the clips were made in', () => {
    fc.assert(
      fc.property(
        clips.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([all, shuffled]) => {
          const [one, other] = [packClips(all), packClips(shuffled)];
          expect(indexText(one.index)).toBe(indexText(other.index));
          expect([...one.files]).toEqual([...other.files]);
        },
      ),
    );
  });

  it('change in one pack at most when one clip changes', () => {
    fc.assert(
      fc.property(clips, clip, (all, changed) => {
        const [first, ...rest] = all;
        if (first === undefined) return;
        const before = packClips(all);
        const after = packClips([{ ...changed, text: first.text }, ...rest]);
        const renewed = [...after.files.keys()].filter((file) => !before.files.has(file));
        expect(renewed.length).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('do not give a clip that was rendered otherwise, or that is not whole', () => {
    const one: Clip = { text: 'forty', key: '0123456789ab', mp3: Uint8Array.of(1, 2, 3), speechMs: 400 };
    const packed = packClips([one]);
    expect(keptClip(packed, 'forty', 'ffffffffffff')).toBeUndefined();
    expect(keptClip(packed, 'fifty', one.key)).toBeUndefined();
    const [[file] = ['']] = packed.files;
    expect(
      keptClip({ ...packed, files: new Map([[file, Uint8Array.of(1)]]) }, 'forty', one.key),
    ).toBeUndefined();
    expect(keptClip({ ...packed, files: new Map() }, 'forty', one.key)).toBeUndefined();
  });
});

describe('the index', () => {
  it('is read back as it was written', () => {
    fc.assert(
      fc.property(clips, (all) => {
        const { index } = packClips(all);
        expect(readVoiceIndex(JSON.parse(indexText(index)))).toEqual(index);
      }),
    );
  });

  it('names the texts that have no clip, each once', () => {
    const { index } = packClips([{ text: 'one', key: '0123456789ab', mp3: Uint8Array.of(1), speechMs: 300 }]);
    expect(missingClips(['two', 'one', 'two', 'toString', 'three'], index)).toEqual([
      'two',
      'toString',
      'three',
    ]);
  });

  it('is refused, saying where, when it cannot be trusted', () => {
    const { index } = packClips([{ text: 'one', key: '0123456789ab', mp3: Uint8Array.of(1), speechMs: 300 }]);
    expect(() => readVoiceIndex({ ...index, format: 2 })).toThrow(/voice index is not readable: format/);
    expect(() => readVoiceIndex({ ...index, packs: {} })).toThrow(/"one" outside pack/);
    expect(() => readVoiceIndex({ ...index, clips: { one: { ...index.clips.one, offset: 7 } } })).toThrow(
      /"one" outside pack/,
    );
    expect(() => readVoiceIndex(null)).toThrow(/not readable/);
  });
});
