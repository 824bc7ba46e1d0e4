import { createHash } from 'node:crypto';
import { type ClipPlace, clipPlace, type VoiceIndex } from '../voice-index.ts';
import type { Clip } from './clip-renderer.ts';

/** How many packs there are: enough that one changed sentence touches little, few enough to fetch one by one. */
const PACK_COUNT = 100;

export interface PackedVoice {
  readonly index: VoiceIndex;
  /** Content of each pack by file name. */
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/**
 * Lays clips into packs. A text's digest alone says which pack it is in and where among its neighbours, so the result
 * depends on the set of clips and not on the order they were made in.
 */
export function packClips(clips: readonly Clip[]): PackedVoice {
  const shelves = new Map<string, Clip[]>();
  for (const clip of [...clips].sort((a, b) => compare(textDigest(a.text), textDigest(b.text)))) {
    const name = packName(clip.text);
    shelves.set(name, [...(shelves.get(name) ?? []), clip]);
  }
  const packs: Record<string, { file: string; bytes: number }> = {};
  const places: [string, ClipPlace][] = [];
  const files = new Map<string, Uint8Array>();
  for (const [name, shelf] of [...shelves].sort(([a], [b]) => compare(a, b))) {
    const content = new Uint8Array(shelf.reduce((sum, { mp3 }) => sum + mp3.length, 0));
    let offset = 0;
    for (const { text, mp3, key, speechMs } of shelf) {
      content.set(mp3, offset);
      places.push([text, { pack: name, offset, length: mp3.length, speechMs, key }]);
      offset += mp3.length;
    }
    const file = `${name}-${createHash('sha256').update(content).digest('hex').slice(0, 12)}.clips`;
    packs[name] = { file, bytes: content.length };
    files.set(file, content);
  }
  places.sort(([a], [b]) => compare(a, b));
  return { index: { format: 1, packs, clips: Object.fromEntries(places) }, files };
}

/**
 * The clip of a text out of packs made earlier, if it was rendered from the same words in the same way.
 * @param key the key the clip would have if it were rendered now
 */
export function keptClip(packed: PackedVoice, text: string, key: string): Clip | undefined {
  const place = clipPlace(packed.index, text);
  if (place === undefined || place.key !== key) return undefined;
  const file = packed.index.packs[place.pack]?.file;
  const content = file === undefined ? undefined : packed.files.get(file);
  if (content === undefined || content.length < place.offset + place.length) return undefined;
  return {
    text,
    key,
    mp3: content.subarray(place.offset, place.offset + place.length),
    speechMs: place.speechMs,
  };
}

/** The index as it is written: one clip a line, so that a change of one sentence is a change of one line. */
export function indexText({ format, packs, clips }: VoiceIndex): string {
  const lines = (record: Readonly<Record<string, unknown>>) =>
    Object.entries(record)
      .map(([name, value]) => `    ${JSON.stringify(name)}: ${JSON.stringify(value)}`)
      .join(',\n');
  return `{\n  "format": ${format},\n  "packs": {\n${lines(packs)}\n  },\n  "clips": {\n${lines(clips)}\n  }\n}\n`;
}

function packName(text: string): string {
  const shelf = Number.parseInt(textDigest(text).slice(0, 8), 16) % PACK_COUNT;
  return `pack${String(shelf).padStart(2, '0')}`;
}

function textDigest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
