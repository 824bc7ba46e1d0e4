import type { Side } from '../../grammar/sides.ts';

/** What a photo shows. The ends are told apart as the string lay: the old end on top of the bale, the new in front. */
export type PhotoOf = 'failedString' | 'oldEnd' | 'newEnd' | 'machine';

/** A photo on the disk. It is never changed; what it shows and when stands in the job's log. */
export interface PhotoRow {
  readonly photoId: string;
  readonly type: PhotoType;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** The line of the log that attaches a photo to the job. */
export interface PhotoEvent {
  readonly type: 'record.photo';
  readonly photoId: string;
  readonly of: PhotoOf;
  readonly side?: Side;
}

/** A photo is made smaller before it is kept; one that is larger all the same is refused. Bytes. */
export const MOST_PHOTO_BYTES = 2_000_000;
export const MOST_PHOTOS_A_JOB = 12;
/** Photos that go into one file; what comes after is left out, and the card says that it is not there. Bytes. */
export const MOST_PHOTO_BYTES_A_FILE = 48_000_000;

/** Why a photo cannot be kept, in one sentence; undefined where it can. @param alreadyKept photos of this job */
export function photoTrouble({ bytes }: Pick<PhotoRow, 'bytes'>, alreadyKept: number): string | undefined {
  if (alreadyKept >= MOST_PHOTOS_A_JOB) {
    return `A job keeps ${MOST_PHOTOS_A_JOB} photos at most, so this one was not kept. The others are as they were.`;
  }
  if (bytes.length === 0) return 'The camera gave an empty photo. Take it again.';
  return bytes.length > MOST_PHOTO_BYTES
    ? 'This photo is too large to keep. Take it again from further away.'
    : undefined;
}

export const PHOTO_NOT_KEPT =
  'The tablet is full, so the photo was not kept. The record is as it was. Free some room, then take it again.';

/** Whole groups of three, so that the pieces of the text join without a seam; no more than one call can take. */
const BASE64_BYTES_A_PIECE = 3 * 2730;

/** A photo as it travels in a file. */
export function photoText({ photoId, type, bytes }: PhotoRow): {
  readonly photoId: string;
  readonly type: PhotoType;
  readonly base64: string;
} {
  const pieces: string[] = [];
  for (let from = 0; from < bytes.length; from += BASE64_BYTES_A_PIECE) {
    const codes = bytes.subarray(from, from + BASE64_BYTES_A_PIECE) as unknown as number[];
    // Spread, the bytes would be counted out one by one, which takes ten times as long.
    pieces.push(btoa(String.fromCharCode.apply(undefined, codes)));
  }
  return { photoId, type, base64: pieces.join('') };
}

/** The photo of a file. @throws DOMException where the text is no base64 */
export function photoFrom({ photoId, type, base64 }: ReturnType<typeof photoText>): PhotoRow {
  const binary = atob(base64);
  const bytes = new Uint8Array(binary.length);
  for (let at = 0; at < binary.length; at++) bytes[at] = binary.charCodeAt(at);
  return { photoId, type, bytes };
}
