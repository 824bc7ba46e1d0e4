import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { JobLog } from '../../../src/records/job-log.ts';
import type { MachineProfile } from '../../../src/records/machine.ts';
import { openRecords, type Records, unkeptJobLog } from '../../../src/records/records.ts';
import { replay } from '../../../src/records/replay.ts';
import { type Kept, trouble } from '../../../src/records/trouble.ts';
import { fakeLocks } from './fake-locks.ts';
import { said, straightWalk, type WalkedStep } from './random-job.ts';
import { kept, readText } from './two-tablets.ts';

const DATABASE = 'knotwright-records';
/** A version of the store that no app has yet. */
const NEWER_VERSION = 99;
const PROFILE: MachineProfile = {
  name: 'Home farm',
  makeAndModel: 'the old two string one',
  serialNumber: '',
  twine: 'sisal',
  notes: '',
  manualValues: [],
};

let locks: LockManager;
let clockMs: number;
let records: Records;

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  locks = fakeLocks();
  clockMs = 1_000_000;
  records = kept(await open());
});

afterEach(async () => {
  vi.restoreAllMocks();
  await records.close();
});

describe('a job', () => {
  it('is on the disk entry by entry, and comes back as it was left', async () => {
    const steps = straightWalk(60);
    const log = await jobOf(steps);
    await records.close();
    records = kept(await open());
    const opened = kept(await records.openJob(log.jobId));
    expect(opened?.log.entries).toEqual(log.entries);
    expect(opened?.replayed.snapshot.context).toEqual(steps.at(-1)?.after.context);
    expect(opened?.replayed.departsAtSeq).toBeUndefined();
  });

  it('keeps its order when the clock runs backwards', async () => {
    const first = await jobOf(straightWalk(3));
    clockMs = 5_000;
    const second = await jobOf(straightWalk(3));
    const entries = kept(await records.readJob(second.jobId))?.entries ?? [];
    expect(entries.map(({ seq }) => seq)).toEqual([0, 1, 2, 3]);
    expect(entries.at(-1)?.atMs).toBe(5_006);
    expect((await found('')).map(({ id }) => id)).toEqual([second.jobId, first.jobId]);
  });

  it('goes on after a restart, numbered on', async () => {
    const log = await jobOf(straightWalk(5));
    await records.close();
    records = kept(await open());
    const opened = kept(await records.openJob(log.jobId));
    const appended = await opened?.log.append({
      event: { type: 'void.restarted' },
      promptState: 'job.inquiry.opening',
    });
    expect(appended).toEqual({ kept: true, seq: 6 });
    expect(kept(await records.readJob(log.jobId))?.header.entryCount).toBe(7);
  });

  it('is opened once, so that two writers never number one log', async () => {
    const log = await jobOf(straightWalk(2));
    expect(kept(await records.openJob(log.jobId))?.log).toBe(log);
    expect(kept(await records.openJob('no such job'))).toBeUndefined();
  });

  it('is flushed to the disk before it counts as kept', async () => {
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await jobOf(straightWalk(4));
    const written = asked.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(written).toHaveLength(5);
    expect(written.every(([, , options]) => options?.durability === 'strict')).toBe(true);
  });
});

describe('the list', () => {
  it('is found by what was said, found, noted and by the machine', async () => {
    const machine = kept(await records.saveMachine(PROFILE));
    const { log } = await records.startJob({ machineId: machine.machineId, person: 'RB' });
    const { after } = straightWalk(1)[0] ?? { after: replay([]).snapshot };
    await log.append(
      {
        event: said('symptom.heldStrandLost'),
        heardText: 'the_string_pulls_out_of_the_disc',
        promptState: 'job.inquiry.opening',
      },
      after,
    );
    await log.append({ event: { type: 'record.note', text: 'Bearing squeals' }, promptState: 'record' });
    await jobOf(straightWalk(1));
    for (const words of ['pulls out', 'SQUEALS', 'home farm', 'rb  disc'])
      expect(
        (await found(words)).map(({ id }) => id),
        words,
      ).toEqual([log.jobId]);
    expect(await found('pulls sideways')).toEqual([]);
    expect(await found('', 1)).toHaveLength(1);
    expect(kept(await records.people())).toEqual(['RB']);
  });

  it('is the same whether it was searched before or not', async () => {
    await jobOf(straightWalk(3));
    const fresh = await found('');
    await found('lets go');
    expect(await found('')).toEqual(fresh);
    const later = await jobOf(straightWalk(2));
    expect((await found('')).map(({ id }) => id)).toEqual([later.jobId, fresh[0]?.id]);
  });

  it('is the same whether it was kept in one piece or not, and whatever was written since', async () => {
    const ids: string[] = [];
    for (let job = 0; job < 210; job++) ids.push((await records.startJob({ person: `P${job}` })).log.jobId);
    // The first search of a session reads the list, and keeps it where many jobs are new to it.
    const newestFirst = ids.toReversed();
    expect((await found('', 500)).map(({ id }) => id)).toEqual(newestFirst);
    for (const [again, touched] of [newestFirst[200], newestFirst[3]].entries()) {
      await records.close();
      records = kept(await open());
      const opened = kept(await records.openJob(touched ?? ''));
      await opened?.log.append({ event: { type: 'record.note', text: `again ${again}` }, promptState: 'x' });
      const { log } = await records.startJob();
      newestFirst.splice(newestFirst.indexOf(touched ?? ''), 1);
      newestFirst.unshift(log.jobId, touched ?? '');
      await records.close();
      records = kept(await open());
      expect((await found('p', 500)).length).toBe(210);
      expect(kept(await records.allJobs()).map(({ id }) => id)).toEqual(newestFirst);
      expect((await found(`again ${again}`)).map(({ id }) => id)).toEqual([touched]);
    }
  });

  it('holds a job that was written while the list was being read', async () => {
    const old = await jobOf(straightWalk(1));
    await records.close();
    records = kept(await open());
    // The read is under way when the job is written.
    const reading = found('lets go');
    const fresh = jobOf(straightWalk(1));
    await reading;
    const { jobId } = await fresh;
    expect((await found('')).map(({ id }) => id)).toEqual([jobId, old.jobId]);
  });
});

describe('a machine', () => {
  it('keeps every saved state and shows the last', async () => {
    const first = kept(await records.saveMachine({ ...PROFILE, baleCount: 10_000 }));
    kept(await records.saveMachine({ ...PROFILE, baleCount: 12_500 }, first.machineId));
    expect(kept(await records.machines()).map(({ profile }) => profile.baleCount)).toEqual([12_500]);
    const history = kept(await records.machineHistory(first.machineId));
    expect(history.map(({ profile }) => profile.baleCount)).toEqual([10_000, 12_500]);
  });
});

describe('when something cannot be kept', () => {
  it('a second tab is told to stand back, and may have the records once the first is done', async () => {
    expect(await open()).toMatchObject({ ok: false, trouble: { kind: 'otherTab' } });
    await records.close();
    records = kept(await open());
  });

  it('a browser without a store says so and holds on to no lock', async () => {
    await records.close();
    vi.stubGlobal('indexedDB', undefined);
    const refused = await open();
    vi.unstubAllGlobals();
    expect(refused).toMatchObject({ ok: false, trouble: { kind: 'noStorage' } });
    expect(refused.ok ? '' : refused.trouble.sentence).toContain('The checks still work.');
    records = kept(await open());
  });

  it('a browser that refuses to open the store says so', async () => {
    await records.close();
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('Not for this page.', 'SecurityError');
    });
    expect(await open()).toMatchObject({ ok: false, trouble: { kind: 'noStorage' } });
  });

  it('records of a newer app are left alone', async () => {
    await records.close();
    await rawOpen(NEWER_VERSION);
    expect(await open()).toMatchObject({ ok: false, trouble: { kind: 'newerApp' } });
  });

  it('an older tab in the way is named', async () => {
    await records.close();
    globalThis.indexedDB = new IDBFactory();
    const older = await rawOpen(1);
    const original = indexedDB.open.bind(indexedDB);
    vi.spyOn(indexedDB, 'open').mockImplementation((name) => original(name, NEWER_VERSION));
    expect(await open()).toMatchObject({ ok: false, trouble: { kind: 'blocked' } });
    older.close();
  });

  it('a full disk loses nothing: what is unsaved waits in order and goes with the next try', async () => {
    const log = await jobOf(straightWalk(3));
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('', 'QuotaExceededError');
    });
    const [, , , fourth, fifth] = straightWalk(5);
    expect(await append(log, fourth)).toMatchObject({ kept: false, seq: 4, trouble: { kind: 'full' } });
    expect(await append(log, fifth)).toMatchObject({ kept: false, seq: 5 });
    expect(log.unsaved.map(({ seq }) => seq)).toEqual([4, 5]);
    expect(kept(await records.readJob(log.jobId))?.header.entryCount).toBe(4);
    full.mockRestore();
    expect(await log.retry()).toEqual({ kept: true, seq: 5 });
    expect(log.unsaved).toEqual([]);
    expect(kept(await records.readJob(log.jobId))?.entries).toEqual(log.entries);
  });

  it('an entry whose header cannot be written is not kept either', async () => {
    const log = await jobOf(straightWalk(2));
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('', 'QuotaExceededError');
    });
    expect(await append(log, straightWalk(3)[2])).toMatchObject({ kept: false });
    put.mockRestore();
    expect(kept(await records.readJob(log.jobId))?.entries).toHaveLength(3);
  });

  it('a store closed under the page is opened again', async () => {
    const log = await jobOf(straightWalk(2));
    const connections = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await records.machines();
    (connections.mock.contexts[0] as IDBDatabase).close();
    connections.mockRestore();
    expect(await append(log, straightWalk(3)[2])).toEqual({ kept: true, seq: 3 });
  });

  it('a write that arrived though its answer was lost is not written twice', async () => {
    const log = await jobOf(straightWalk(2));
    const original = IDBDatabase.prototype.transaction;
    const lost = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(function (
      this: IDBDatabase,
      ...asked
    ) {
      const transaction = original.apply(this, asked);
      // It commits, and yet the page is told that it was torn down.
      const listen = transaction.addEventListener.bind(transaction);
      transaction.addEventListener = (type: string, listener: unknown) => {
        if (type === 'abort') listen('complete', listener as EventListener);
      };
      return transaction;
    });
    expect(await append(log, straightWalk(3)[2])).toMatchObject({ kept: true });
    expect(lost).toHaveBeenCalledTimes(2);
  });

  it('a newer app may have the store at once, and this one holds what it cannot write', async () => {
    const log = await jobOf(straightWalk(2));
    const newer = await rawOpen(NEWER_VERSION);
    expect(await append(log, straightWalk(3)[2])).toMatchObject({
      kept: false,
      trouble: { kind: 'newerApp' },
    });
    expect(log.unsaved).toHaveLength(1);
    newer.close();
  });

  it('a job that nothing can keep still has its log in memory', async () => {
    const log = unkeptJobLog(trouble('noStorage'));
    for (const step of straightWalk(3)) {
      expect(await append(log, step)).toMatchObject({ kept: false, trouble: { kind: 'noStorage' } });
    }
    expect(log.unsaved.map(({ seq }) => seq)).toEqual([0, 1, 2, 3]);
    const file = await readText(await (await log.saveToFile()).text());
    expect(file.ok && file.bundle.job(0).entries).toHaveLength(4);
  });
});

function open(): Promise<Kept<Records>> {
  return openRecords({ locks, now: () => clockMs++ });
}

async function jobOf(steps: readonly WalkedStep[]): Promise<JobLog> {
  const { log, started } = await records.startJob();
  expect(started).toEqual({ kept: true, seq: 0 });
  for (const [index, step] of steps.entries()) {
    expect(await append(log, step)).toEqual({ kept: true, seq: index + 1 });
  }
  return log;
}

function append(log: JobLog, step: WalkedStep | undefined) {
  if (!step) throw new Error('The walk is shorter than the test needs.');
  return log.append(step.draft, step.after);
}

async function found(words: string, limit = 50) {
  return kept(await records.findJobs({ words, limit }));
}

function rawOpen(version: number): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
