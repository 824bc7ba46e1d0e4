import { BUNDLE_FORMAT, BUNDLE_VERSION } from './bundle.ts';
import { crc32, crc32Text } from './crc32.ts';
import type { JobHeader } from './job-header.ts';
import type { LogEntry } from './log-entry.ts';
import type { MachineRevision } from './machine.ts';

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
  readonly jobs: AsyncIterable<readonly JobToBundle[]> | Iterable<readonly JobToBundle[]>;
}

/** The bytes of a file, a piece a lot of jobs. */
export async function* bundleBytes({
  tabletId,
  savedAtMs,
  machines,
  jobs,
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
  let isFirst = true;
  for await (const lot of jobs) {
    if (lot.length === 0) continue;
    yield piece(`${isFirst ? '' : ','}${lines(lot.map(bundled))}`);
    isFirst = false;
  }
  yield piece('],\n');
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

/** One line a thing, commas between. */
function lines(things: readonly object[]): string {
  return things.length === 0 ? '' : `${things.map((thing) => JSON.stringify(thing)).join(',\n')}\n`;
}
