import type { FigureValues } from '../../flows/figures-asked/values.ts';
import type { JobEvent } from '../../flows/heard.ts';
import type { CountEntry } from '../../flows/miss-log/entry.ts';
import type { FigureMeaning } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { PhotoEvent } from './photo.ts';

/** Who has the tablet, by initials as they gave them. */
export type Initials = string;

/** What the record knows of a job beside what was said in it. The charts never see these. */
export type RecordEvent =
  /** Always the first entry of a job, and only that. */
  | { readonly type: 'record.started'; readonly machineId?: string; readonly person?: Initials }
  /** The machine or the person was named later, or named anew. */
  | { readonly type: 'record.about'; readonly machineId?: string; readonly person?: Initials }
  | { readonly type: 'record.note'; readonly text: string }
  | FigureEvent
  | CountEvent
  | PhotoEvent;

/** One thing said while bales were counted. */
export interface CountEvent {
  readonly type: 'record.counted';
  readonly entry: CountEntry;
  /** Repairs done in the job until then; missing in older records, for none. */
  readonly repairs?: number;
}

/** A figure that was asked for and worked out, as it was said then: a later app may reckon otherwise. */
export interface FigureEvent {
  readonly type: 'record.figure';
  readonly figure: FigureMeaning;
  readonly values: FigureValues;
  readonly said: Say;
  /** What it takes for granted, each a sentence with its standing. */
  readonly granted: readonly string[];
}

export type LoggedEvent = JobEvent | RecordEvent;

/** One line of a job's log. A line is never changed once it is written; a mistake is put right by a later line. */
export interface LogEntry {
  readonly jobId: string;
  /** 0, 1, 2 ... without gaps: the order of the job, whatever the clock said. */
  readonly seq: number;
  /** Wall clock of the tablet, milliseconds since 1970; may be wrong and may run backwards. */
  readonly atMs: number;
  readonly event: LoggedEvent;
  /** The words as the recogniser gave them, where it was a voice. */
  readonly heardText?: string;
  /** Loudness of the utterance, decibels below full scale (0 or less), where it was a voice. */
  readonly levelDbfs?: number;
  /** The state that was asking when this was conveyed, by the chart's own name. */
  readonly promptState: string;
  /** The tablet that wrote the line. */
  readonly tabletId: string;
}

/** What a caller tells of an entry; the log itself numbers, dates and signs it. */
export type EntryDraft = Pick<LogEntry, 'event' | 'heardText' | 'levelDbfs' | 'promptState'>;

export function isRecordEvent(event: LoggedEvent): event is RecordEvent {
  return event.type.startsWith('record.');
}

/** The promptState of what the record notes by itself. */
export const NOBODY_ASKED = 'record';
