import * as v from 'valibot';
import {
  BUNDLE_FORMAT,
  BUNDLE_VERSION,
  type BundledJob,
  JOB_ROW,
  MACHINE_ROW,
  PHOTO_ROW,
  PHOTOS_LEFT_OUT,
} from './bundle.ts';
import { crc32, crc32Text } from './crc32.ts';
import type { MachineRevision } from './machine.ts';
import { type PhotoRow, photoFrom } from './photo.ts';

/** A file that was found whole and well formed. Its jobs and photos stay bytes until each is asked for. */
export interface Bundle {
  readonly machines: readonly MachineRevision[];
  readonly jobCount: number;
  readonly photoCount: number;
  /** Photos its jobs name and it does not hold. */
  readonly photosLeftOut: number;
  /** @param place 0 to one less than `jobCount` */
  job(place: number): BundledJob;
  /** @param place 0 to one less than `photoCount` */
  photo(place: number): PhotoRow;
}

/** Why a file was not taken, in a sentence; the store is as it was. */
export type ReadBundle =
  | { readonly ok: true; readonly bundle: Bundle }
  | { readonly ok: false; readonly reason: string };

/** A long work that tells how far it is, and may be cancelled. */
export interface Watched {
  /** @param share of this stage, 0 to 1 */
  readonly progress?: (stage: 'checking' | 'takingIn', share: number) => void;
  readonly signal?: AbortSignal;
}

const UNTOUCHED = 'Nothing was taken from it, and the records here are as they were.';
const FOREIGN = `This is not a file of records made by this app. ${UNTOUCHED}`;
const NEWER = `This file was made by a newer version of the app. Update the app, then take it in again. ${UNTOUCHED}`;
const BROKEN = `This file is broken or was changed after it was saved. ${UNTOUCHED}`;
/** The browser lost hold of it: a stick pulled out, a file changed meanwhile. */
export const UNREADABLE = `This file cannot be read. Choose it once more. ${UNTOUCHED}`;
export const CANCELLED = `Taking in the file was stopped. ${UNTOUCHED}`;

/** Longest the page waits for its turn while a file is checked, milliseconds. */
const LONGEST_TURN_MS = 40;
const CHECKSUM_BYTES_A_TURN = 1 << 20;

/** Carries the sentence out of whatever reads. */
class Refused extends Error {}

/** Reads a file whole, or refuses it whole. */
export async function readBundle(bytes: Uint8Array, watched: Watched = {}): Promise<ReadBundle> {
  try {
    return { ok: true, bundle: await checked(bytes, watched) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, reason: error.message };
    throw error;
  }
}

async function checked(bytes: Uint8Array, { progress, signal }: Watched): Promise<Bundle> {
  const decoder = new TextDecoder();
  const turn = turns(signal);
  const head = decoder.decode(bytes.subarray(0, 200));
  if (!head.includes(`"format":"${BUNDLE_FORMAT}"`)) throw new Refused(FOREIGN);
  if (Number(/"version":(\d+)/.exec(head)?.[1] ?? 0) > BUNDLE_VERSION) throw new Refused(NEWER);

  const lastLineAt = bytes.lastIndexOf(NEW_LINE, bytes.length - 2) + 1;
  let checksum = 0;
  for (let from = 0; from < lastLineAt; from += CHECKSUM_BYTES_A_TURN) {
    checksum = crc32(bytes.subarray(from, Math.min(from + CHECKSUM_BYTES_A_TURN, lastLineAt)), checksum);
    await turn();
  }
  const digits = LAST_LINE.exec(decoder.decode(bytes.subarray(lastLineAt)))?.[1];
  if (digits !== crc32Text(checksum)) throw new Refused(BROKEN);

  const lines = new Lines(bytes.subarray(0, lastLineAt), decoder);
  lines.expect(/^\{"format":.*,$/);
  lines.expect(/^"machines":\[$/);
  const machines = lines
    .rows()
    .map((span, place) => parsed(MACHINE_ROW, lines.json(span), `machines.${place}`));
  lines.expect(/^"jobs":\[$/);
  const jobs = lines.rows();
  const photos = lines.takes(/^"photos":\[$/) ? lines.rows() : [];
  const leftOut = lines.takes(/^"photosLeftOut":\d+,$/);
  const photosLeftOut = leftOut
    ? parsed(PHOTOS_LEFT_OUT, Number(/\d+/.exec(leftOut)?.[0]), 'photosLeftOut')
    : 0;
  lines.expectEnd();

  const ids = new Set<string>();
  for (const [place, span] of jobs.entries()) {
    const job = parsed(JOB_ROW, lines.json(span), `jobs.${place}`) as BundledJob;
    if (!isConsistent(job)) throw new Refused(`${BROKEN} Its job ${place + 1} does not hold together.`);
    if (ids.has(job.header.id)) throw new Refused(`${BROKEN} It holds one job twice.`);
    ids.add(job.header.id);
    progress?.('checking', span.to / bytes.length);
    await turn();
  }
  for (const [place, span] of photos.entries()) {
    parsed(PHOTO_ROW, lines.json(span), `photos.${place}`);
    progress?.('checking', span.to / bytes.length);
    await turn();
  }
  return {
    machines: machines as readonly MachineRevision[],
    jobCount: jobs.length,
    photoCount: photos.length,
    photosLeftOut,
    job: (place) => lines.json(spanAt(jobs, place)) as BundledJob,
    photo: (place) => photoFrom(lines.json(spanAt(photos, place)) as Parameters<typeof photoFrom>[0]),
  };
}

/** The last line of a file: the checksum of everything before the line. */
const LAST_LINE = /^"crc32":"([0-9a-f]{8})"\}\n?$/;

const NEW_LINE = 10;

/** Where a line lies, without its end. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** The lines of a file, one after the other. */
class Lines {
  readonly #bytes: Uint8Array;
  readonly #decoder: TextDecoder;
  #at = 0;

  constructor(bytes: Uint8Array, decoder: TextDecoder) {
    this.#bytes = bytes;
    this.#decoder = decoder;
  }

  /** The next line, where it is of this form. */
  takes(form: RegExp): string | undefined {
    const span = this.#next();
    const text = span && this.#text(span);
    if (span === undefined || text === undefined || !form.test(text)) return undefined;
    this.#at = span.to + 1;
    return text;
  }

  expect(form: RegExp): void {
    if (this.takes(form) === undefined) throw new Refused(BROKEN);
  }

  /** Every line up to the end of the list. */
  rows(): Span[] {
    const rows: Span[] = [];
    while (this.takes(/^\],$/) === undefined) {
      const span = this.#next();
      if (!span) throw new Refused(BROKEN);
      rows.push(span);
      this.#at = span.to + 1;
    }
    return rows;
  }

  expectEnd(): void {
    if (this.#at < this.#bytes.length) throw new Refused(BROKEN);
  }

  /** What a row of a list says; the commas between rows may stand at either end. */
  json(span: Span): unknown {
    try {
      return JSON.parse(this.#text(span).replace(/^,|,$/g, ''));
    } catch {
      throw new Refused(BROKEN);
    }
  }

  #next(): Span | undefined {
    const to = this.#bytes.indexOf(NEW_LINE, this.#at);
    return to < 0 ? undefined : { from: this.#at, to };
  }

  #text({ from, to }: Span): string {
    return this.#decoder.decode(this.#bytes.subarray(from, to));
  }
}

function spanAt(spans: readonly Span[], place: number): Span {
  const span = spans[place];
  if (!span) throw new Error(`The file has no line ${place}.`);
  return span;
}

function parsed<T>(schema: v.GenericSchema<unknown, T>, value: unknown, at: string): T {
  const result = v.safeParse(schema, value, { abortEarly: true });
  if (result.success) return result.output;
  const [issue] = result.issues;
  const path = [at, v.getDotPath(issue)].filter(Boolean).join('.');
  throw new Refused(
    `This file holds something this version of the app does not know, at ${path}: ${issue.message} ${UNTOUCHED}`,
  );
}

/** A log begins once, and its header counts it rightly. */
function isConsistent({ header, entries }: BundledJob): boolean {
  return (
    entries.every(({ event }, index) => (event.type === 'record.started') === (index === 0)) &&
    header.entryCount === entries.length &&
    header.createdAtMs === entries[0]?.atMs &&
    header.lastAtMs === entries.at(-1)?.atMs
  );
}

/** Gives the page its turn now and then, and ends where somebody cancelled. */
function turns(signal: AbortSignal | undefined): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (signal?.aborted) throw new Refused(CANCELLED);
    if (performance.now() - since < LONGEST_TURN_MS) return;
    await new Promise((resolve) => setTimeout(resolve));
    since = performance.now();
  };
}
