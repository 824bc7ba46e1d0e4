import { BUNDLE_FORMAT, BUNDLE_VERSION } from './bundle.ts';
import { crc32, crc32Text } from './crc32.ts';
import type { JobHeader } from './job-header.ts';
import type { LogEntry } from './log-entry.ts';
import type { MachineRevision } from './machine.ts';
import { MOST_PHOTO_BYTES_A_FILE, type PhotoRow, photoText } from './photo.ts';

/** A job to be put into a file. */
export interface JobToBundle {
  readonly header: JobHeader;
  readonly entries: readonly LogEntry[];
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

/** The bytes of a file, a piece a lot of jobs. */
export async function* bundleBytes({
  tabletId,
  savedAtMs,
  machines,
  jobs,
  photos,
}: ToBundle): AsyncGenerator<Uint8Array<ArrayBuffer>, void> {
  const encoder = new TextEncoder();
  let checksum = 0;
  const piece = (text: string): Uint8Array<ArrayBuffer> => {
    const bytes = encoder.encode(text);
    checksum = crc32(bytes, checksum);
    return bytes;
  };
  const about = JSON.stringify({ format: BUNDLE_FORMAT, version: BUNDLE_VERSION, savedAtMs, tabletId });
  yield piece(`${about.slice(0, -1)},\n"machines":[\n${lines(machines)}],\n"jobs":[\n`);
  const photoIds: string[] = [];
  let isFirst = true;
  for await (const lot of jobs) {
    if (lot.length === 0) continue;
    photoIds.push(...lot.flatMap(({ entries }) => photosNamedIn(entries)));
    yield piece(`${isFirst ? '' : ','}${lines(lot.map(bundled))}`);
    isFirst = false;
  }
  yield piece('],\n');
  if (photos && photoIds.length > 0) {
    yield piece('"photos":[\n');
    let bytesSoFar = 0;
    for await (const photo of photos([...new Set(photoIds)])) {
      if (bytesSoFar + photo.bytes.length > MOST_PHOTO_BYTES_A_FILE) break;
      yield piece(`${bytesSoFar === 0 ? '' : ','}${lines([photoText(photo)])}`);
      bytesSoFar += photo.bytes.length;
    }
    yield piece('],\n');
  }
  yield encoder.encode(`"crc32":"${crc32Text(checksum)}"}\n`);
}

/** A file of the pieces, each handed to the browser as it comes, which keeps large ones on the disk. */
export async function bundleFile(bundle: ToBundle): Promise<File> {
  const parts: Blob[] = [];
  for await (const bytes of bundleBytes(bundle)) parts.push(new Blob([bytes]));
  const day = new Date(bundle.savedAtMs).toISOString().slice(0, 10);
  return new File(parts, `knotwright-records-${day}.json`, { type: 'application/json' });
}

function bundled({ header, entries }: JobToBundle): object {
  return { header, entries: entries.map(({ jobId: _job, seq: _seq, ...entry }) => entry) };
}

function photosNamedIn(entries: readonly LogEntry[]): readonly string[] {
  return entries.flatMap(({ event }) => (event.type === 'record.photo' ? [event.photoId] : []));
}

/** One line a thing, commas between. */
function lines(things: readonly object[]): string {
  return things.length === 0 ? '' : `${things.map((thing) => JSON.stringify(thing)).join(',\n')}\n`;
}
