import { render } from 'preact';
import type { Appended, JobLog } from '../../../src/records/job-log.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { openRecords, type Records } from '../../../src/records/records.ts';
import type { Kept } from '../../../src/records/trouble.ts';
import { HandOverSheet } from '../../../src/report/hand-over-sheet.tsx';
import { JobCardSheet } from '../../../src/report/job-card.tsx';
import { makeCard } from '../../../src/report/make-card.ts';
import '../../../src/app.css';

let opened: Records | undefined;
let writing: JobLog | undefined;

/** What the tests of the records may do in a real browser. */
const recordsPage = {
  /** The trouble, or that there is none. */
  async tryToOpen(): Promise<string> {
    const outcome = await openRecords();
    return outcome.ok ? 'opened' : outcome.trouble.kind;
  },

  async startJob() {
    opened ??= kept(await openRecords());
    writing = (await opened.startJob()).log;
    return { log: writing, writeOn: recordsPage.writeOn };
  },

  /** Adds a note to the job that was started. */
  writeOn(text: string): Promise<Appended> {
    return writingLog().append({ event: { type: 'record.note', text }, promptState: 'record' });
  },

  retry(): Promise<Appended> {
    return writingLog().retry();
  },

  /** Every line of the newest job, as it is on the disk. */
  async everyLine(): Promise<readonly LogEntry[]> {
    opened ??= kept(await openRecords());
    const [newest] = kept(await opened.findJobs({ words: '', limit: 1 }));
    return (newest && kept(await opened.readJob(newest.id))?.entries) ?? [];
  },

  /** Lays a job on paper. */
  show(sheet: 'jobCard' | 'handOver', entries: readonly LogEntry[]): void {
    const card = makeCard({ entries });
    const root = document.getElementById('app');
    if (!root) throw new Error('The page has no root.');
    render(sheet === 'jobCard' ? <JobCardSheet card={card} /> : <HandOverSheet card={card} />, root);
  },
};

export type RecordsPage = typeof recordsPage;

Object.assign(window, { recordsPage });

function writingLog(): JobLog {
  if (!writing) throw new Error('No job was started.');
  return writing;
}

function kept<T>(outcome: Kept<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`${outcome.trouble.kind}: ${outcome.trouble.detail ?? ''}`);
}
