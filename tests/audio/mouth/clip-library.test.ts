import { describe, expect, it } from 'vitest';
import { clipLibrary } from '../../../audio/mouth/clip-library.ts';
import { packClips } from '../../../audio/mouth/render/clip-packs.ts';
import type { VoiceIndex } from '../../../audio/mouth/voice-index.ts';

const RATE_HZ = 16_000;

/** A voice whose "MP3" is the length of its tone in milliseconds, as text. */
function toneVoice(lengthsMs: Readonly<Record<string, number>>) {
  const clips = Object.entries(lengthsMs).map(([text, speechMs]) => ({
    text,
    key: '0123456789ab',
    mp3: new TextEncoder().encode(String(speechMs)),
    speechMs,
  }));
  const { index, files } = packClips(clips);
  const reads: string[] = [];
  const decodes: string[] = [];
  const library = (changed: VoiceIndex = index, spoil = (bytes: Uint8Array) => bytes) =>
    clipLibrary(
      changed,
      async (file) => {
        reads.push(file);
        const content = files.get(file);
        if (content === undefined) throw new Error('offline');
        return spoil(content).slice().buffer as ArrayBuffer;
      },
      async (mp3) => {
        const text = new TextDecoder().decode(mp3);
        decodes.push(text);
        return tone(Number(text));
      },
      bufferWith,
    );
  return { index, reads, decodes, library };
}

/** A buffer with a tone amid the silence a decoder leaves. */
function tone(lengthMs: number): AudioBuffer {
  const samples = new Float32Array((RATE_HZ * (lengthMs + 300)) / 1000);
  for (let at = 0; at < (RATE_HZ * lengthMs) / 1000; at++) {
    samples[at + 0.1 * RATE_HZ] = 0.1 * Math.sin((2 * Math.PI * 500 * at) / RATE_HZ);
  }
  return bufferWith(samples, RATE_HZ);
}

/** As much of a buffer as the library looks at. */
function bufferWith(samples: Float32Array, sampleRate: number): AudioBuffer {
  return { getChannelData: () => samples, sampleRate } as unknown as AudioBuffer;
}

describe('the clip library', () => {
  it('finds the speech amid the silence of the decoder', async () => {
    const { speechStartS, speechS } = await toneVoice({ one: 400 }).library().clip('one', 1);
    expect(speechStartS).toBeCloseTo(0.09, 2);
    expect(speechS).toBeCloseTo(0.44, 1);
  });

  it('reads a pack once and decodes a clip once, also when asked twice at the same time', async () => {
    const { library, reads, decodes } = toneVoice({ one: 400 });
    const shelf = library();
    await Promise.all([shelf.clip('one', 1), shelf.clip('one', 1)]);
    await shelf.clip('one', 1);
    expect([reads.length, decodes]).toEqual([1, ['400']]);
  });

  it('forgets the clips unheard longest once a minute and a half is kept', async () => {
    const texts = Array.from({ length: 10 }, (_, index) => `sentence ${index}`);
    const { library, decodes } = toneVoice(
      Object.fromEntries(texts.map((text, index) => [text, 20_000 + index])),
    );
    const shelf = library();
    for (const text of texts) await shelf.clip(text, 1);
    await shelf.clip('sentence 9', 1);
    expect(decodes.length).toBe(10);
    await shelf.clip('sentence 0', 1);
    expect(decodes.length).toBe(11);
  });

  it('gives the speech alone, longer or shorter, at another pace, and decodes it anew when the pace changes', async () => {
    const { library, decodes } = toneVoice({ one: 400 });
    const shelf = library();
    const usual = await shelf.clip('one', 1);
    for (const pace of [0.8, 1.25]) {
      const { buffer, speechStartS, speechS } = await shelf.clip('one', pace);
      expect(speechStartS).toBe(0);
      expect(speechS).toBeCloseTo(usual.speechS / pace, 3);
      expect(buffer.getChannelData(0).length / RATE_HZ).toBeCloseTo(speechS, 3);
      await shelf.clip('one', pace);
    }
    expect(decodes.length).toBe(3);
  });

  it('names a fragment that has no clip', async () => {
    await expect(toneVoice({ one: 400 }).library().clip('two', 1)).rejects.toMatchObject({
      kind: 'noClip',
      message: 'There is no recording of "two".',
    });
  });

  it('tells a pack that is incomplete, and reads it anew the next time', async () => {
    const { library, reads } = toneVoice({ one: 400 });
    let whole = false;
    const shelf = library(undefined, (bytes) => (whole ? bytes : bytes.subarray(1)));
    await expect(shelf.clip('one', 1)).rejects.toMatchObject({ kind: 'badClip', message: /is incomplete/ });
    whole = true;
    await expect(shelf.clip('one', 1)).resolves.toBeDefined();
    expect(reads.length).toBe(2);
  });

  it('does not play a clip that lasts longer or shorter than it was rendered', async () => {
    const { index, library } = toneVoice({ one: 400 });
    const place = index.clips.one;
    if (place === undefined) throw new Error('The clip is gone.');
    for (const speechMs of [250, 600]) {
      const changed = { ...index, clips: { one: { ...place, speechMs } } };
      await expect(library(changed).clip('one', 1)).rejects.toMatchObject({
        kind: 'badClip',
        message: /lasts 0\.4/,
      });
    }
  });
});
