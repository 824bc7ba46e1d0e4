import * as v from 'valibot';
import { type Counts, exportedCounts, readCounts } from '../../flows/diagnosis/learning.ts';
import { INPUT_IDS } from '../../flows/figures-asked/inputs.ts';
import { SYSTEM_VOIDS } from '../../flows/heard.ts';
import { MACHINE_VALUE_IDS } from '../../flows/machine-values.ts';
import { MOST_AT_ONCE } from '../../flows/miss-log/entry.ts';
import { HEARING_GRADES } from '../../grammar/hearing-grade.ts';
import { FIGURE_MEANINGS, MEANING_IDS } from '../../grammar/lexicon.ts';
import { crc32, crc32Text } from './crc32.ts';
import type { JobHeader } from './job-header.ts';
import type { LogEntry } from './log-entry.ts';
import type { MachineRevision } from './machine.ts';
import { PHOTO_TYPES, type PhotoRow, photoFrom } from './photo.ts';

/**
 * The file that carries records from one tablet to another: JSON, one job or machine a line, closed by a checksum
 * over every byte before it.
 */
export const BUNDLE_FORMAT = 'knotwright records';
export const BUNDLE_VERSION = 1;

/** A job as it travels: its place in the log is its place in the list, so lines carry neither number nor job. */
export interface BundledJob {
  readonly header: JobHeader;
  readonly entries: readonly BundledEntry[];
}

export type BundledEntry = Omit<LogEntry, 'jobId' | 'seq'>;

export interface Bundle {
  readonly jobs: readonly BundledJob[];
  readonly machines: readonly MachineRevision[];
  readonly photos: readonly PhotoRow[];
}

/** Why a file was not taken, in a sentence; the store is as it was. */
export type ReadBundle =
  | { readonly ok: true; readonly bundle: Bundle }
  | { readonly ok: false; readonly reason: string };

const UNTOUCHED = 'Nothing was taken from it, and the records here are as they were.';
const FOREIGN = `This is not a file of records made by this app. ${UNTOUCHED}`;
const NEWER = `This file was made by a newer version of the app. Update the app, then take it in again. ${UNTOUCHED}`;
const BROKEN = `This file is broken or was changed after it was saved. ${UNTOUCHED}`;

/** Reads a file whole, or refuses it whole. */
export function readBundle(text: string): ReadBundle {
  const head = text.slice(0, 200);
  if (!head.includes(`"format":"${BUNDLE_FORMAT}"`)) return { ok: false, reason: FOREIGN };
  const version = Number(/"version":(\d+)/.exec(head)?.[1] ?? 0);
  if (version > BUNDLE_VERSION) return { ok: false, reason: NEWER };
  if (!isWhole(text)) return { ok: false, reason: BROKEN };
  const parsed = v.safeParse(BUNDLE, parseJson(text));
  if (!parsed.success) return { ok: false, reason: misfit(parsed.issues[0]) };
  const { jobs, machines } = parsed.output as Omit<Bundle, 'photos'>;
  const photos = (parsed.output.photos ?? []).map(photoFrom);
  const odd = jobs.findIndex((job) => !isConsistent(job));
  if (odd >= 0) return { ok: false, reason: `${BROKEN} Its job ${odd + 1} does not hold together.` };
  if (new Set(jobs.map(({ header }) => header.id)).size < jobs.length) {
    return { ok: false, reason: `${BROKEN} It holds one job twice.` };
  }
  return { ok: true, bundle: { jobs, machines, photos } };
}

/** The last line of a file: the checksum of everything before the line. */
const LAST_LINE = /^"crc32":"([0-9a-f]{8})"\}\n?$/;

function isWhole(text: string): boolean {
  const lastLineAt = text.lastIndexOf('"crc32":');
  const digits = LAST_LINE.exec(text.slice(lastLineAt))?.[1];
  return digits === crc32Text(crc32(new TextEncoder().encode(text.slice(0, lastLineAt))));
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function misfit(issue: v.BaseIssue<unknown>): string {
  return `This file holds something this version of the app does not know, at ${v.getDotPath(issue) ?? 'its start'}: ${issue.message} ${UNTOUCHED}`;
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

const ID = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const WHOLE = v.pipe(v.number(), v.integer(), v.minValue(0));
const FINITE = v.pipe(v.number(), v.finite());

const MEASUREMENT = v.strictObject({
  amount: FINITE,
  unit: v.picklist([
    'inch',
    'foot',
    'thou',
    'millimetre',
    'poundForce',
    'newton',
    'pound',
    'kilogram',
    'turn',
  ]),
});

const HEARD = v.strictObject({
  type: v.picklist(MEANING_IDS),
  slots: v.strictObject({
    side: v.optional(v.picklist(['left', 'right'])),
    measurement: v.optional(MEASUREMENT),
    missCount: v.optional(v.strictObject({ misses: WHOLE, bales: WHOLE })),
  }),
  channel: v.variant('by', [
    v.strictObject({ by: v.literal('touch') }),
    v.strictObject({
      by: v.literal('voice'),
      margin: FINITE,
      snrDb: v.number(),
      hearing: v.exactOptional(v.picklist(HEARING_GRADES)),
    }),
  ]),
});

const ABOUT = { machineId: v.optional(ID), person: v.optional(v.string()) };

const MISS_COUNT = v.strictObject({ misses: WHOLE, bales: WHOLE });

const FIGURE_VALUES = v.record(v.picklist(INPUT_IDS), v.union([FINITE, MISS_COUNT, v.picklist(MEANING_IDS)]));

const MACHINE_BANDS = v.array(
  v.strictObject({ of: v.picklist(MACHINE_VALUE_IDS), limits: v.array(MEASUREMENT), source: v.string() }),
);

const FIGURE = v.strictObject({
  type: v.literal('record.figure'),
  figure: v.picklist(FIGURE_MEANINGS),
  values: FIGURE_VALUES,
  said: v.array(v.string()),
  granted: v.array(v.string()),
});

const COUNTED = v.strictObject({
  type: v.literal('record.counted'),
  entry: v.variant('kind', [
    v.strictObject({
      kind: v.literal('good'),
      bales: v.pipe(WHOLE, v.minValue(1), v.maxValue(MOST_AT_ONCE)),
    }),
    v.strictObject({ kind: v.literal('miss'), side: v.picklist(['left', 'right', 'both']) }),
    v.strictObject({ kind: v.literal('newBall'), side: v.picklist(['left', 'right']) }),
    v.strictObject({ kind: v.literal('crop'), crop: v.picklist(['thin', 'usual', 'dense']) }),
    v.strictObject({ kind: v.literal('speed'), speed: v.picklist(['slow', 'full']) }),
    v.strictObject({ kind: v.literal('takeBack') }),
  ]),
});

const PHOTO = v.strictObject({
  type: v.literal('record.photo'),
  photoId: ID,
  of: v.picklist(['failedString', 'oldEnd', 'newEnd', 'machine']),
  side: v.optional(v.picklist(['left', 'right'])),
});

const EVENT = v.union([
  PHOTO,
  COUNTED,
  FIGURE,
  v.strictObject({ type: v.literal('machine.known'), bands: MACHINE_BANDS }),
  HEARD,
  v.strictObject({ type: v.picklist(SYSTEM_VOIDS) }),
  v.strictObject({ type: v.literal('estimates.taken'), counts: v.custom<Counts>(areCounts) }),
  v.strictObject({ type: v.literal('record.started'), ...ABOUT }),
  v.strictObject({ type: v.literal('record.about'), ...ABOUT }),
  v.strictObject({ type: v.literal('record.note'), text: v.string() }),
]);

/** Learnt counts have a reader of their own, which names every fault; here it only matters that there is none. */
function areCounts(value: unknown): boolean {
  return readCounts(exportedCounts(value as Counts)).ok;
}

const ENTRY = v.strictObject({
  atMs: FINITE,
  event: EVENT,
  heardText: v.optional(v.string()),
  levelDbfs: v.optional(v.number()),
  promptState: v.string(),
  tabletId: ID,
});

const HEADER = v.strictObject({
  id: ID,
  originId: ID,
  createdAtMs: FINITE,
  lastAtMs: FINITE,
  order: FINITE,
  entryCount: WHOLE,
  status: v.picklist(['open', 'closed', 'handedOver']),
  ...ABOUT,
  side: v.optional(v.picklist(['left', 'right'])),
  symptom: v.optional(v.string()),
  cause: v.optional(v.string()),
  outcome: v.optional(v.picklist(['done', 'proved', 'stillMisses'])),
  searchText: v.string(),
});

const MACHINE = v.strictObject({
  machineId: ID,
  revision: v.pipe(WHOLE, v.minValue(1)),
  tabletId: ID,
  savedAtMs: FINITE,
  profile: v.strictObject({
    name: v.string(),
    makeAndModel: v.string(),
    serialNumber: v.string(),
    twine: v.string(),
    notes: v.string(),
    baleCount: v.optional(WHOLE),
    manualValues: v.array(
      v.strictObject({ name: v.string(), amount: FINITE, unit: v.string(), source: v.string() }),
    ),
    bands: v.optional(MACHINE_BANDS),
    figures: v.optional(FIGURE_VALUES),
    wear: v.optional(
      v.array(
        v.strictObject({
          name: v.string(),
          limitMm: FINITE,
          limitSource: v.string(),
          from: v.picklist(['new at zero', 'run in']),
          readings: v.array(v.strictObject({ bales: WHOLE, wearMm: FINITE })),
        }),
      ),
    ),
  }),
});

const BUNDLE = v.strictObject({
  format: v.literal(BUNDLE_FORMAT),
  version: v.literal(BUNDLE_VERSION),
  savedAtMs: FINITE,
  tabletId: ID,
  machines: v.array(MACHINE),
  jobs: v.array(v.strictObject({ header: HEADER, entries: v.array(ENTRY) })),
  photos: v.optional(
    v.array(
      v.strictObject({ photoId: ID, type: v.picklist(PHOTO_TYPES), base64: v.pipe(v.string(), v.base64()) }),
    ),
  ),
  crc32: v.string(),
});
