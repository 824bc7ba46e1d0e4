import { familyById } from '../../flows/families/all.ts';
import type { JobSnapshot } from '../../flows/prompt.ts';
import { ruleOf, SYMPTOM_MEANINGS, type SymptomMeaning, taughtForm } from '../../grammar/lexicon.ts';
import type { Side } from '../../grammar/sides.ts';
import type { Initials, LogEntry } from './log-entry.ts';

export type JobStatus = 'open' | 'closed' | 'handedOver';

/** A job in the list: everything in it is worked out from the log, so it is never a second truth. */
export interface JobHeader {
  readonly id: string;
  /** The id the job was first given; a copy kept beside another keeps it. */
  readonly originId: string;
  readonly createdAtMs: number;
  readonly lastAtMs: number;
  /** Place in the list, newest highest; runs upward even where the clock does not. */
  readonly order: number;
  readonly entryCount: number;
  readonly status: JobStatus;
  readonly machineId?: string;
  readonly person?: Initials;
  readonly side?: Side;
  /** The person's own words where they were heard, else the words of the button. */
  readonly symptom?: string;
  /** The cause that was put right or named last, in plain words. */
  readonly cause?: string;
  readonly outcome?: 'done' | 'proved' | 'stillMisses';
  /** Lower-case words that the search looks through, each once. */
  readonly searchText: string;
}

/** What a search needs of a job: far less than its header, so that thousands are read at once. */
export interface ListedJob {
  readonly id: string;
  readonly words: string;
  readonly machineId?: string;
}

export function listedJob({ id, searchText, machineId }: JobHeader): ListedJob {
  return { id, words: searchText, ...(machineId ? { machineId } : {}) };
}

/** What a header takes from outside its log. */
export type HeaderPlace = Pick<JobHeader, 'id' | 'originId' | 'order'>;

/**
 * The header of a job.
 * @param entries the whole log, in order, at least its first entry
 * @param snapshot the job after the last entry
 */
export function jobHeader(
  place: HeaderPlace,
  entries: readonly LogEntry[],
  snapshot: JobSnapshot,
): JobHeader {
  const { context } = snapshot;
  const [first] = entries;
  const last = entries.at(-1);
  if (!first || !last) throw new Error(`The job ${place.id} has no entry, so there is nothing to list.`);
  const { machineId, person } = aboutOf(entries);
  const symptom = symptomOf(entries)?.words;
  const repair = context.repairs.at(-1);
  const named = repair ?? (context.next.kind === 'name' ? context.next : undefined);
  const cause = named && familyById(named.family).causes[named.cause]?.name;
  const family = context.looksLike && familyById(context.looksLike).name;
  return {
    ...place,
    createdAtMs: first.atMs,
    lastAtMs: last.atMs,
    entryCount: entries.length,
    status: statusOf(snapshot),
    ...(machineId ? { machineId } : {}),
    ...(person ? { person } : {}),
    ...(context.side ? { side: context.side } : {}),
    ...(symptom ? { symptom } : {}),
    ...(cause ? { cause } : {}),
    ...(repair ? { outcome: repair.outcome } : {}),
    searchText: searchTextOf([
      symptom,
      person,
      context.side,
      family,
      cause,
      ...context.answers.map(({ said }) => ruleOf(said).readBack),
      ...notesOf(entries),
    ]),
  };
}

/** The machine and the person a job is about, as named last. */
export function aboutOf(entries: readonly LogEntry[]): {
  readonly machineId?: string;
  readonly person?: Initials;
} {
  const abouts = entries.flatMap(({ event }) =>
    event.type === 'record.started' || event.type === 'record.about' ? [event] : [],
  );
  const machineId = abouts.findLast((about) => about.machineId)?.machineId;
  const person = abouts.findLast((about) => about.person)?.person;
  return { ...(machineId ? { machineId } : {}), ...(person ? { person } : {}) };
}

/** The fault as the person put it. */
export interface Symptom {
  readonly words: string;
  /** Whether these are the person's own words or those on a button. */
  readonly by: 'voice' | 'button';
}

/** The opening words as they were heard, or the phrase of the button that was pressed instead. */
export function symptomOf(entries: readonly LogEntry[]): Symptom | undefined {
  const entry = entries.findLast(({ event }) => meaningOfSymptom(event.type));
  const meaning = entry && meaningOfSymptom(entry.event.type);
  if (!meaning) return undefined;
  return entry.heardText
    ? { words: entry.heardText.replaceAll('_', ' '), by: 'voice' }
    : { words: taughtForm(meaning), by: 'button' };
}

function meaningOfSymptom(type: string): SymptomMeaning | undefined {
  return SYMPTOM_MEANINGS.find((meaning) => meaning === type);
}

/** Whether a job still goes on. */
export function statusOf(snapshot: JobSnapshot): JobStatus {
  if (snapshot.matches({ inquiry: 'closed' })) return 'closed';
  return snapshot.matches({ inquiry: 'handedOver' }) ? 'handedOver' : 'open';
}

function notesOf(entries: readonly LogEntry[]): readonly string[] {
  return entries.flatMap(({ event }) => (event.type === 'record.note' ? [event.text] : []));
}

function searchTextOf(texts: readonly (string | undefined)[]): string {
  const words = texts
    .filter((text) => text)
    .join(' ')
    .toLowerCase()
    .split(/\s+/);
  return [...new Set(words)].join(' ');
}
