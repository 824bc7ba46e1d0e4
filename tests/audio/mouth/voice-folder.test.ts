import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ClipRenderer } from '../../../audio/mouth/render/clip-renderer.ts';
import { readVoiceFolder, updateVoiceFolder } from '../../../audio/mouth/render/voice-folder.ts';
import { missingClips } from '../../../audio/mouth/voice-index.ts';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'voice-folder-'));
});

afterEach(() => rm(folder, { recursive: true }));

/** Renders a text as its own letters; `manner` stands for all settings. */
function lettersRenderer(manner = 0): ClipRenderer {
  const keyOf = (text: string) => (text.length * 1000 + manner).toString(16).padStart(12, '0');
  return {
    keyOf,
    async render(text) {
      if (text === 'unspeakable') throw new Error(`Nothing audible comes of "${text}".`);
      return { text, key: keyOf(text), mp3: new TextEncoder().encode(`${manner}${text}`), speechMs: 100 };
    },
  };
}

async function contents(): Promise<ReadonlyMap<string, string>> {
  const names = await readdir(folder);
  return new Map(
    await Promise.all(
      names.map(async (name) => [name, await readFile(join(folder, name), 'latin1')] as const),
    ),
  );
}

describe('the voice folder', () => {
  it('is rendered once and then kept byte for byte', async () => {
    const texts = ['one', 'two', 'three', 'two'];
    const first = await updateVoiceFolder(folder, texts, lettersRenderer());
    expect([...first.rendered].sort()).toEqual(['one', 'three', 'two']);
    const before = await contents();
    const second = await updateVoiceFolder(folder, texts, lettersRenderer());
    expect(second).toMatchObject({ rendered: [], kept: 3, bytes: first.bytes });
    expect(await contents()).toEqual(before);
  });

  it('renders only what is new, and ends the same as if made at one go', async () => {
    await updateVoiceFolder(folder, ['one', 'two', 'gone'], lettersRenderer());
    const { rendered } = await updateVoiceFolder(folder, ['one', 'two', 'three'], lettersRenderer());
    expect(rendered).toEqual(['three']);
    const stepByStep = await contents();
    await rm(folder, { recursive: true });
    await updateVoiceFolder(folder, ['three', 'two', 'one'], lettersRenderer());
    expect(stepByStep).toEqual(await contents());
    const voice = await readVoiceFolder(folder);
    expect(voice && missingClips(['one', 'gone'], voice.index)).toEqual(['gone']);
  });

  it('renders everything again when the voice changes', async () => {
    await updateVoiceFolder(folder, ['one', 'two'], lettersRenderer(1));
    expect((await updateVoiceFolder(folder, ['one', 'two'], lettersRenderer(2))).rendered).toEqual([
      'one',
      'two',
    ]);
  });

  it('renders a clip again whose pack has been lost', async () => {
    await updateVoiceFolder(folder, ['one'], lettersRenderer());
    for (const name of await readdir(folder)) if (name.endsWith('.clips')) await rm(join(folder, name));
    expect((await updateVoiceFolder(folder, ['one'], lettersRenderer())).rendered).toEqual(['one']);
  });

  it('stays as it was when a text cannot be rendered', async () => {
    await updateVoiceFolder(folder, ['one'], lettersRenderer());
    const before = await contents();
    await expect(updateVoiceFolder(folder, ['two', 'unspeakable'], lettersRenderer())).rejects.toThrow(
      /"unspeakable"/,
    );
    expect(await contents()).toEqual(before);
  });

  it('says so when its index is damaged, and does not render over it', async () => {
    await writeFile(join(folder, 'index.json'), '{"format":1,"packs":{},"clips":{"one":{}}}');
    await expect(updateVoiceFolder(folder, ['one'], lettersRenderer())).rejects.toThrow(
      /voice index is not readable/,
    );
  });
});
