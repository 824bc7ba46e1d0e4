import type { LogEntry } from './log-entry.ts';

/** A line of a log without what its place says already: which job it is of, and the how-manieth. */
export type LogLine = Omit<LogEntry, 'jobId' | 'seq'>;

/**
 * Lines that follow each other in the log of one job, on the disk. They lie there as the JSON that a file holds:
 * a browser reads one long text many times as fast as sixty small rows, and a file is written without reading it.
 */
export interface LogPart {
  readonly jobId: string;
  /** Place of the first line in its log. */
  readonly seq: number;
  /** The lines as a JSON array. */
  readonly lines: string;
}

/** Parts of a log that are written anew as one; more would make jobs slow to read, fewer every line slow to keep. */
const LINES_A_PART = 16;

/**
 * Whether the whole log is due to be written as one part: when it is at an end, and now and then before. Trying
 * again with more lines never turns a yes into a no.
 */
export function isDueWhole(keptCount: number, lineCount: number, isEnded: boolean): boolean {
  return isEnded || Math.floor(lineCount / LINES_A_PART) > Math.floor(keptCount / LINES_A_PART);
}

/** @param entries lines of one job that follow each other, at least one */
export function partOf(entries: readonly LogEntry[]): LogPart {
  const [first] = entries;
  if (!first) throw new Error('A part of a log has at least one line.');
  return { jobId: first.jobId, seq: first.seq, lines: linesText(entries) };
}

/** The lines of a log as they stand in a file. */
export function linesText(entries: readonly LogEntry[]): string {
  return JSON.stringify(entries.map(({ jobId: _job, seq: _seq, ...line }) => line));
}

/** The parts of a log as one text, as it stands in a file. @param parts in order */
export function joinedText(parts: readonly LogPart[]): string {
  const [only, ...more] = parts;
  return only && more.length === 0 ? only.lines : JSON.stringify(joined(parts));
}

/** The log of a job. @param parts in order */
export function entriesOf(jobId: string, parts: readonly LogPart[]): LogEntry[] {
  return joined(parts).map((line, seq) => ({ ...line, jobId, seq }));
}

/** A write that arrived though its answer was lost may have left a part that another one holds too. */
function joined(parts: readonly LogPart[]): LogLine[] {
  const all: LogLine[] = [];
  for (const { seq, lines } of parts) {
    const part = JSON.parse(lines) as LogLine[];
    all.push(...part.slice(Math.max(0, all.length - seq)));
  }
  return all;
}
