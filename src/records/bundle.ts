import * as v from 'valibot';
import { type Counts, exportedCounts, readCounts } from '../../flows/diagnosis/learning.ts';
import { INPUT_IDS } from '../../flows/figures-asked/inputs.ts';
import { SYSTEM_VOIDS } from '../../flows/heard.ts';
import { MACHINE_VALUE_IDS } from '../../flows/machine-values.ts';
import { MOST_AT_ONCE } from '../../flows/miss-log/entry.ts';
import { HEARING_GRADES } from '../../grammar/hearing-grade.ts';
import { FIGURE_MEANINGS, MEANING_IDS } from '../../grammar/lexicon.ts';
import { NAMED_PART_IDS } from '../../grammar/named-parts.ts';
import type { JobHeader } from './job-header.ts';
import type { LoggedEvent } from './log-entry.ts';
import type { LogLine } from './log-part.ts';
import type { MachineRevision } from './machine.ts';
import { PHOTO_TYPES, type photoText } from './photo.ts';

/**
 * The file that carries records from one tablet to another: JSON in UTF-8, laid out in lines so that it can be read
 * and written a job at a time.
 *
 * ```
 * {"format":"knotwright records","version":2,"savedAtMs":1782892800000,"tabletId":"...",
 * "machines":[
 * one saved state of a machine a line, see MACHINE_ROW
 * ],
 * "jobs":[
 * one job a line: {"header":{...},"entries":[...]}, see JOB_ROW; jobs by id, lines of a log in order
 * ],
 * "photos":[
 * one photo a line: {"photoId":"...","type":"image/jpeg","base64":"..."}, see PHOTO_ROW
 * ],
 * "photosLeftOut":0,
 * "crc32":"0a1b2c3d"}
 * ```
 *
 * Commas stand between the rows of a list, at the end of one or the beginning of the next. Times are milliseconds
 * since 1970 by the tablet's clock; amounts carry their unit. The checksum (CRC-32 of ISO 3309) is over every byte
 * before its line. A key that is not named here is refused, so whatever adds one raises the version. Version 1 had
 * no `photosLeftOut`, and no `photos` where there were none.
 */
export const BUNDLE_FORMAT = 'knotwright records';
export const BUNDLE_VERSION = 2;

/** A job as it travels: its place in the log is its place in the list, so lines carry neither number nor job. */
export interface BundledJob {
  readonly header: JobHeader;
  readonly entries: readonly LogLine[];
}

const ID = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const WHOLE = v.pipe(v.number(), v.integer(), v.minValue(0));
const FINITE = v.pipe(v.number(), v.finite());

/** As far from 1970 as a date can be told (ECMAScript, "Time Values and Time Range"). */
const MOST_MS = 8.64e15;
const MOMENT_MS = v.pipe(v.number(), v.minValue(-MOST_MS), v.maxValue(MOST_MS));

const MEASUREMENT = v.strictObject({
  amount: FINITE,
  unit: v.picklist([
    'inch',
    'foot',
    'thou',
    'metre',
    'millimetre',
    'poundForce',
    'newton',
    'kilogramForce',
    'pound',
    'kilogram',
    'turn',
    'metrePerKilogram',
    'footPerPound',
  ]),
});

const SIDE = v.exactOptional(v.picklist(['left', 'right']));

const MISS_COUNT = v.strictObject({ misses: WHOLE, bales: WHOLE });

const CALENDAR_DAY = v.strictObject({ month: WHOLE, day: WHOLE });

const HEARD = v.strictObject({
  type: v.picklist(MEANING_IDS),
  slots: v.strictObject({
    side: SIDE,
    part: v.exactOptional(v.picklist(NAMED_PART_IDS)),
    measurement: v.exactOptional(MEASUREMENT),
    missCount: v.exactOptional(MISS_COUNT),
    count: v.exactOptional(FINITE),
    day: v.exactOptional(CALENDAR_DAY),
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

const ABOUT = { machineId: v.exactOptional(ID), person: v.exactOptional(v.string()) };

const FIGURE_VALUES = v.record(
  v.picklist(INPUT_IDS),
  v.union([FINITE, MISS_COUNT, CALENDAR_DAY, v.picklist(MEANING_IDS)]),
);

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
    v.strictObject({ kind: v.literal('density'), density: v.picklist(['looser', 'usual', 'tighter']) }),
    v.strictObject({ kind: v.literal('speed'), speed: v.picklist(['slow', 'full']) }),
    v.strictObject({ kind: v.literal('takeBack') }),
  ]),
  repairs: v.exactOptional(WHOLE),
});

const PHOTO = v.strictObject({
  type: v.literal('record.photo'),
  photoId: ID,
  of: v.picklist(['failedString', 'oldEnd', 'newEnd', 'machine']),
  side: SIDE,
});

const EVENT = v.variant('type', [
  HEARD,
  COUNTED,
  v.strictObject({ type: v.picklist(SYSTEM_VOIDS) }),
  v.strictObject({ type: v.literal('record.note'), text: v.string() }),
  PHOTO,
  FIGURE,
  v.strictObject({ type: v.literal('machine.known'), bands: MACHINE_BANDS }),
  v.strictObject({ type: v.literal('estimates.taken'), counts: v.custom<Counts>(areCounts) }),
  v.strictObject({ type: v.literal('record.started'), ...ABOUT }),
  v.strictObject({ type: v.literal('record.about'), ...ABOUT }),
]);

/** Learnt counts have a reader of their own, which names every fault; here it only matters that there is none. */
function areCounts(value: unknown): boolean {
  return readCounts(exportedCounts(value as Counts)).ok;
}

const ENTRY = v.strictObject({
  atMs: MOMENT_MS,
  event: EVENT,
  heardText: v.exactOptional(v.string()),
  levelDbfs: v.exactOptional(v.number()),
  promptState: v.string(),
  tabletId: ID,
});

const HEADER = v.strictObject({
  id: ID,
  originId: ID,
  createdAtMs: MOMENT_MS,
  lastAtMs: MOMENT_MS,
  // One more than the highest of all has to be another number, or the list would lose the jobs that come after.
  order: MOMENT_MS,
  entryCount: WHOLE,
  status: v.picklist(['open', 'closed', 'handedOver']),
  ...ABOUT,
  side: SIDE,
  symptom: v.exactOptional(v.string()),
  cause: v.exactOptional(v.string()),
  outcome: v.exactOptional(v.picklist(['done', 'proved', 'stillMisses'])),
  searchText: v.string(),
});

export const MACHINE_ROW = v.strictObject({
  machineId: ID,
  revision: v.pipe(WHOLE, v.minValue(1)),
  tabletId: ID,
  savedAtMs: MOMENT_MS,
  profile: v.strictObject({
    name: v.string(),
    makeAndModel: v.string(),
    serialNumber: v.string(),
    twine: v.string(),
    notes: v.string(),
    settings: v.exactOptional(v.string()),
    baleCount: v.exactOptional(WHOLE),
    manualValues: v.array(
      v.strictObject({ name: v.string(), amount: FINITE, unit: v.string(), source: v.string() }),
    ),
    bands: v.exactOptional(MACHINE_BANDS),
    figures: v.exactOptional(FIGURE_VALUES),
    wear: v.exactOptional(
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

export const JOB_ROW = v.strictObject({ header: HEADER, entries: v.array(ENTRY) });

export const PHOTO_ROW = v.strictObject({
  photoId: ID,
  type: v.picklist(PHOTO_TYPES),
  base64: v.pipe(v.string(), v.base64()),
});

export const PHOTOS_LEFT_OUT = WHOLE;

/** A thing that was read is not changed. */
type Read<T> = T extends object ? { readonly [Key in keyof T]: Read<T[Key]> } : T;
/** Whether a file can hold whatever the store can, and nothing else. */
type Holds<Schema extends v.GenericSchema, Thing> = [Read<v.InferOutput<Schema>>, Thing] extends [
  Thing,
  Read<v.InferOutput<Schema>>,
]
  ? true
  : false;
type Must<Claim extends true> = Claim;
/** Compiles only where each claim holds: a line that a file could not carry would be lost to every other tablet. */
export type FileHoldsTheStore = [
  Must<Holds<typeof EVENT, LoggedEvent>>,
  Must<Holds<typeof JOB_ROW, BundledJob>>,
  Must<Holds<typeof MACHINE_ROW, MachineRevision>>,
  Must<Holds<typeof PHOTO_ROW, ReturnType<typeof photoText>>>,
];
