import * as v from 'valibot';

/**
 * The table of contents of the recorded voice: which clip says a fragment, and where its bytes lie. Clips are kept in
 * a few packs, so that a tablet fetches a hundred files for offline use and not a thousand, and so that changing
 * one sentence changes one pack.
 */

const packSchema = v.strictObject({
  /** File name beside the index. It carries a digest of the bytes, so a name never stands for two contents. */
  file: v.pipe(v.string(), v.regex(/^pack\d\d-[0-9a-f]{12}\.clips$/)),
  bytes: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

const clipSchema = v.strictObject({
  pack: v.string(),
  /** Span of the MP3 in the pack, bytes. */
  offset: v.pipe(v.number(), v.integer(), v.minValue(0)),
  length: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** How long the speech lasts, milliseconds, without the coder's silence. */
  speechMs: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** Digest of what was spoken and how: a clip whose key has not changed need not be rendered again. */
  key: v.pipe(v.string(), v.regex(/^[0-9a-f]{12}$/)),
});

const indexSchema = v.strictObject({
  format: v.literal(1),
  packs: v.record(v.string(), packSchema),
  clips: v.record(v.string(), clipSchema),
});

export type ClipPlace = Readonly<v.InferOutput<typeof clipSchema>>;

export interface VoiceIndex {
  readonly format: 1;
  readonly packs: Readonly<Record<string, Readonly<v.InferOutput<typeof packSchema>>>>;
  readonly clips: Readonly<Record<string, ClipPlace>>;
}

/** Name of the index file in the voice folder. */
export const INDEX_FILE = 'index.json';

/**
 * Checks what was read from the index file.
 * @throws Error saying what is wrong, for anything a clip could not be found by
 */
export function readVoiceIndex(content: unknown): VoiceIndex {
  const result = v.safeParse(indexSchema, content);
  if (!result.success) {
    const [issue] = result.issues;
    throw new Error(
      `The voice index is not readable: ${v.getDotPath(issue) ?? 'top level'}: ${issue.message}`,
    );
  }
  for (const [text, { pack, offset, length }] of Object.entries(result.output.clips)) {
    const bytes = result.output.packs[pack]?.bytes;
    if (bytes === undefined || offset + length > bytes) {
      throw new Error(`The voice index puts "${text}" outside pack ${pack}.`);
    }
  }
  return result.output;
}

/** The place of a fragment's clip, if it has one. */
export function clipPlace(index: VoiceIndex, fragment: string): ClipPlace | undefined {
  return Object.hasOwn(index.clips, fragment) ? index.clips[fragment] : undefined;
}

/** The texts that have no clip, each once: what a build must not ship with. */
export function missingClips(texts: Iterable<string>, index: VoiceIndex): readonly string[] {
  return [...new Set(texts)].filter((text) => clipPlace(index, text) === undefined);
}
