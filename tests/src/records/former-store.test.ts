import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { jobHeader } from '../../../src/records/job-header.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { openRecords } from '../../../src/records/records.ts';
import { replay } from '../../../src/records/replay.ts';
import { fakeLocks } from './fake-locks.ts';
import { straightWalk } from './random-job.ts';
import { kept } from './two-tablets.ts';

/** The stores as version 1 and 2 of the app made them: a row a line. */
function formerStore(version: 1 | 2, logs: ReadonlyMap<string, readonly LogEntry[]>): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('knotwright-records', version);
    request.onupgradeneeded = () => {
      const { result: db } = request;
      const entries = db.createObjectStore('entries', { keyPath: ['jobId', 'seq'] });
      const jobs = db.createObjectStore('jobs', { keyPath: 'id' });
      jobs.createIndex('byOrder', 'order');
      jobs.createIndex('byOrigin', 'originId');
      db.createObjectStore('machines', { keyPath: ['machineId', 'revision', 'tabletId'] });
      db.createObjectStore('people', { keyPath: 'initials' });
      db.createObjectStore('tablet').put('the old tablet', 'id');
      if (version === 2) db.createObjectStore('photos', { keyPath: 'photoId' });
      for (const [id, log] of logs) {
        for (const entry of log) entries.add(entry);
        jobs.add(jobHeader({ id, originId: id, order: log.length }, log, replay(log).snapshot));
      }
    };
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
    request.onerror = () => reject(request.error);
  });
}

function logOf(jobId: string, steps: number): LogEntry[] {
  const drafts = straightWalk(steps).map(({ draft }) => draft);
  return [{ event: { type: 'record.started' }, promptState: 'record' } as const, ...drafts].map(
    (draft, seq) => ({ ...draft, jobId, seq, atMs: seq * 1_000, tabletId: 'the old tablet' }),
  );
}

it.each([1, 2] as const)(
  'a store of version %i opens with every line, and the jobs go on',
  async (version) => {
    globalThis.indexedDB = new IDBFactory();
    const logs = new Map([30, 0, 70].map((steps) => [`job of ${steps}`, logOf(`job of ${steps}`, steps)]));
    await formerStore(version, logs);
    const records = kept(await openRecords({ locks: fakeLocks() }));
    expect(records.tabletId).toBe('the old tablet');
    for (const [id, log] of logs) {
      expect(kept(await records.readJob(id))?.entries).toEqual(log);
      const opened = kept(await records.openJob(id));
      const noted = await opened?.log.append({
        event: { type: 'record.note', text: 'on' },
        promptState: 'x',
      });
      expect(noted).toEqual({ kept: true, seq: log.length });
      const photo = { type: 'image/jpeg', bytes: new Uint8Array([1]) } as const;
      expect(opened && (await records.keepPhoto(opened.log, { of: 'machine' }, photo))).toBeUndefined();
      expect(kept(await records.readJob(id))?.entries).toHaveLength(log.length + 2);
    }
    await records.close();
  },
);
