import { render } from 'preact';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import type { MachineProfile } from '../../../src/records/machine.ts';
import { openRecords } from '../../../src/records/records.ts';
import { HandOverSheet } from '../../../src/report/hand-over-sheet.tsx';
import { JobCardSheet } from '../../../src/report/job-card.tsx';
import { makeCard } from '../../../src/report/make-card.ts';
import '../../../src/app.css';

/** What the tests of the records may do in a real browser. */
const recordsPage = {
  openRecords,
  /** Lays a job on paper. */
  show(sheet: 'jobCard' | 'handOver', entries: readonly LogEntry[], machine?: MachineProfile): void {
    const card = makeCard({ entries, ...(machine ? { machine } : {}) });
    const root = document.getElementById('app');
    if (!root) throw new Error('The page has no root.');
    render(sheet === 'jobCard' ? <JobCardSheet card={card} /> : <HandOverSheet card={card} />, root);
  },
};

export type RecordsPage = typeof recordsPage;

Object.assign(window, { recordsPage });
