import * as v from 'valibot';
import type { SpeechModel } from '../ears/speech-model.ts';

/** The folder beside the page that a packed field model is served from, and its table of contents there. */
export const FIELD_MODEL_FOLDER = 'field-model/';
export const FIELD_MODEL_INDEX = 'index.json';

/** What the app is told about a packed field model, and what a tablet keeps of it once it is chosen. */
export const packedFieldModelSchema = v.strictObject({
  format: v.literal(1),
  /** Not `.gz`: servers would announce a content encoding and browsers unpack it. */
  fileName: v.pipe(v.string(), v.regex(/^field-[0-9a-f]{8}\.model$/)),
  bytes: v.pipe(v.number(), v.integer(), v.minValue(1)),
  sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
  frontEnd: v.picklist(['cleaned', 'plain']),
  /** See {@link SpeechModel.timeScale}. */
  timeScale: v.pipe(v.number(), v.minValue(1 / 3), v.maxValue(1)),
  /** The taught forms that it cannot hear, each with another that it can, where there is one. */
  taughtGaps: v.array(v.strictObject({ taught: v.string(), instead: v.exactOptional(v.string()) })),
});

export type PackedFieldModel = Readonly<v.InferOutput<typeof packedFieldModelSchema>>;

/** A table of contents, or undefined where it is none: a server without a field model may answer with anything. */
export function readFieldModelIndex(content: unknown): PackedFieldModel | undefined {
  const result = v.safeParse(packedFieldModelSchema, content);
  return result.success ? result.output : undefined;
}

/** How a packed field model is listened with. @param folderUrl where it is served, ending in a slash */
export function fieldSpeechModel(packed: PackedFieldModel, folderUrl: string): SpeechModel {
  const { fileName, bytes, sha256, frontEnd, timeScale } = packed;
  return { archive: { url: folderUrl + fileName, bytes, sha256 }, graph: 'words', frontEnd, timeScale };
}
