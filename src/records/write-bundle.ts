import { BUNDLE_FORMAT, BUNDLE_VERSION } from './bundle.ts';
import { crc32, crc32Text } from './crc32.ts';
import type { JobHeader } from './job-header.ts';
import type { LogLine } from './log-part.ts';
import type { MachineRevision } from './machine.ts';
import { MOST_PHOTO_BYTES_A_FILE, type PhotoRow, photoText } from './photo.ts';

/** A job to be put into a file. */
export interface JobToBundle {
  readonly header: JobHeader;
  /** Its log as a JSON array, as it lies on the disk. */
  readonly lines: string;
}

/** What goes into a file; jobs come in lots, so that never more than a lot is in memory. */
export interface ToBundle {
  readonly tabletId: string;
  readonly savedAtMs: number;
  readonly machines: readonly MachineRevision[];
  /** Reads photos by their ids; left out where photos do not go along. Those that are not there are passed over. */
  readonly photos?: (ids: readonly string[]) => AsyncIterable<PhotoRow>;
  readonly jobs: AsyncIterable<readonly JobToBundle[]> | Iterable<readonly JobToBundle[]>;
}

/** A file, and what would not go into it. */
export interface FileOfRecords {
  readonly file: File;
  /** Photos that the jobs name and the file does not hold. */
  readonly photosLeftOut: number;
}

/** The bytes of a file, a piece a lot of jobs. @returns how many photos were left out */
export async function* bundleBytes({
  tabletId,
  savedAtMs,
  machines,
  jobs,
  photos,
}: ToBundle): AsyncGenerator<Uint8Array<ArrayBuffer>, number> {
  const encoder = new TextEncoder();
  let checksum = 0;
  const piece = (text: string): Uint8Array<ArrayBuffer> => {
    const bytes = encoder.encode(text);
    checksum = crc32(bytes, checksum);
    return bytes;
  };
  const about = JSON.stringify({ format: BUNDLE_FORMAT, version: BUNDLE_VERSION, savedAtMs, tabletId });
  yield piece(
    `${about.slice(0, -1)},\n"machines":[\n${rows(machines.map((machine) => JSON.stringify(machine)))}],\n"jobs":[\n`,
  );
  const photoIds = new Set<string>();
  let isFirst = true;
  for await (const lot of jobs) {
    if (lot.length === 0) continue;
    for (const { lines } of lot) for (const id of photosNamedIn(lines)) photoIds.add(id);
    yield piece(`${isFirst ? '' : ','}${rows(lot.map(jobRow))}`);
    isFirst = false;
  }
  yield piece('],\n"photos":[\n');
  let photosIn = 0;
  let bytesSoFar = 0;
  for await (const photo of photos?.([...photoIds]) ?? []) {
    if (bytesSoFar + photo.bytes.length > MOST_PHOTO_BYTES_A_FILE) break;
    yield piece(`${photosIn === 0 ? '' : ','}${rows([JSON.stringify(photoText(photo))])}`);
    bytesSoFar += photo.bytes.length;
    photosIn += 1;
  }
  const photosLeftOut = photoIds.size - photosIn;
  yield piece(`],\n"photosLeftOut":${photosLeftOut},\n`);
  yield encoder.encode(`"crc32":"${crc32Text(checksum)}"}\n`);
  return photosLeftOut;
}

/** A file of the pieces, each handed to the browser as it comes, which keeps large ones on the disk. */
export async function bundleFile(bundle: ToBundle): Promise<FileOfRecords> {
  const parts: Blob[] = [];
  const pieces = bundleBytes(bundle);
  let piece = await pieces.next();
  while (!piece.done) {
    parts.push(new Blob([piece.value]));
    piece = await pieces.next();
  }
  const day = new Date(bundle.savedAtMs).toISOString().slice(0, 10);
  const file = new File(parts, `knotwright-records-${day}.json`, { type: 'application/json' });
  return { file, photosLeftOut: piece.value };
}

function jobRow({ header, lines }: JobToBundle): string {
  return `{"header":${JSON.stringify(header)},"entries":${lines}}`;
}

/** Most logs name no photo, and are not read for it. */
function photosNamedIn(lines: string): readonly string[] {
  if (!lines.includes('"record.photo"')) return [];
  return (JSON.parse(lines) as LogLine[]).flatMap(({ event }) =>
    event.type === 'record.photo' ? [event.photoId] : [],
  );
}

/** One thing a line, commas between. */
function rows(things: readonly string[]): string {
  return things.length === 0 ? '' : `${things.join(',\n')}\n`;
}
