import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { INDEX_FILE, readVoiceIndex } from '../voice-index.ts';
import { indexText, keptClip, type PackedVoice, packClips } from './clip-packs.ts';
import type { Clip, ClipRenderer } from './clip-renderer.ts';

export interface VoiceFolderReport {
  readonly rendered: readonly string[];
  readonly kept: number;
  /** Size of all packs together, bytes. */
  readonly bytes: number;
  /** Length of all speech together, seconds. */
  readonly speechS: number;
}

/**
 * Brings a voice folder up to date with the texts: renders what is new or changed, keeps the rest byte for byte, and
 * removes packs that nothing points at.
 * @throws Error where a text cannot be rendered; the folder is then as it was
 */
export async function updateVoiceFolder(
  folder: string,
  texts: readonly string[],
  renderer: ClipRenderer,
): Promise<VoiceFolderReport> {
  const before = await readVoiceFolder(folder);
  const rendered: string[] = [];
  const clips: Clip[] = [];
  for (const text of new Set(texts)) {
    const kept = before && keptClip(before, text, renderer.keyOf(text));
    clips.push(kept ?? (await renderer.render(text)));
    if (kept === undefined) rendered.push(text);
  }
  const after = packClips(clips);
  await writeVoiceFolder(folder, after);
  return {
    rendered,
    kept: clips.length - rendered.length,
    bytes: [...after.files.values()].reduce((sum, { length }) => sum + length, 0),
    speechS: clips.reduce((sum, { speechMs }) => sum + speechMs / 1000, 0),
  };
}

/**
 * Reads a voice folder, or gives undefined where there is none yet.
 * @throws Error where there is one that cannot be read: it is to be looked at, not quietly rendered anew
 */
export async function readVoiceFolder(folder: string): Promise<PackedVoice | undefined> {
  const names: string[] = await readdir(folder).catch(() => []);
  if (!names.includes(INDEX_FILE)) return undefined;
  const index = readVoiceIndex(JSON.parse(await readFile(join(folder, INDEX_FILE), 'utf8')));
  const files = new Map<string, Uint8Array>();
  for (const { file } of Object.values(index.packs)) {
    if (names.includes(file)) files.set(file, await readFile(join(folder, file)));
  }
  return { index, files };
}

async function writeVoiceFolder(folder: string, { index, files }: PackedVoice): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const [file, content] of files) await writeFile(join(folder, file), content);
  await writeFile(join(folder, INDEX_FILE), indexText(index));
  const wanted = new Set<string>([INDEX_FILE, ...files.keys()]);
  for (const name of await readdir(folder)) {
    if (!wanted.has(name)) await rm(join(folder, name));
  }
}
