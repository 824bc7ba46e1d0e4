import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBundle } from '../../../src/records/bundle.ts';
import { crc32, crc32Text } from '../../../src/records/crc32.ts';
import { straightWalk, walk } from './random-job.ts';
import { kept, Tablet, write } from './two-tablets.ts';

const PROFILE = {
  name: 'Home farm',
  makeAndModel: 'two string, old',
  serialNumber: '',
  twine: 'sisal “nine thousand”',
  notes: '',
  baleCount: 12_000,
  manualValues: [{ name: 'holder pull', amount: 50, unit: 'lbf', source: 'manual' }],
};

async function tabletWithAJob(steps = straightWalk(30)): Promise<{ tablet: Tablet; jobId: string }> {
  const tablet = new Tablet(1_000_000);
  const jobId = await tablet.use(async (records) => {
    const { machineId } = kept(await records.saveMachine(PROFILE));
    const { log } = await records.startJob({ machineId, person: 'RB' });
    await write(log, steps);
    return log.jobId;
  });
  return { tablet, jobId };
}

/** Goes on with a job by one note, as each tablet would in its own words. */
function addNote(tablet: Tablet, jobId: string, text: string): Promise<void> {
  return tablet.use(async (records) => {
    const opened = kept(await records.openJob(jobId));
    await opened?.log.append({ event: { type: 'record.note', text }, promptState: 'record' });
  });
}

describe('a file from one tablet to another', () => {
  it('carries every job and machine, and changes nothing the second time', async () => {
    const { tablet } = await tabletWithAJob();
    const other = new Tablet(9_000_000);
    const file = await tablet.file();
    expect(await other.takeIn(file)).toEqual({
      ok: true,
      taken: { newJobs: 1, extended: 0, keptBeside: 0, alreadyHere: 0, machineRevisions: 1 },
    });
    const once = await other.contents();
    expect(once).toEqual(await tablet.contents());
    expect(await other.takeIn(file)).toMatchObject({ ok: true, taken: { newJobs: 0, alreadyHere: 1 } });
    expect(await other.contents()).toEqual(once);
    expect(await other.use(async (records) => kept(await records.people()))).toEqual(['RB']);
  });

  it('carries what random jobs hold, unchanged', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(9_999), { maxLength: 60 }), async (choices) => {
        const { tablet } = await tabletWithAJob(walk(choices));
        const other = new Tablet(1);
        await other.takeIn(await tablet.file());
        expect(await other.contents()).toEqual(await tablet.contents());
      }),
      { numRuns: 12 },
    );
  });

  it('goes on where the other tablet stopped', async () => {
    const { tablet, jobId } = await tabletWithAJob();
    const other = new Tablet(9_000_000);
    await other.takeIn(await tablet.file());
    await addNote(tablet, jobId, 'later');
    expect(await other.takeIn(await tablet.file())).toMatchObject({ ok: true, taken: { extended: 1 } });
    expect(await other.contents()).toEqual(await tablet.contents());
  });

  it('leaves a tablet that is further on as it is', async () => {
    const { tablet, jobId } = await tabletWithAJob();
    const earlier = await tablet.file();
    await addNote(tablet, jobId, 'later');
    const before = await tablet.contents();
    expect(await tablet.takeIn(earlier)).toMatchObject({ ok: true, taken: { alreadyHere: 1, extended: 0 } });
    expect(await tablet.contents()).toEqual(before);
  });

  it('keeps both where two tablets went on with one job, on both, however often files go back and forth', async () => {
    const { tablet, jobId } = await tabletWithAJob();
    const other = new Tablet(9_000_000);
    await other.takeIn(await tablet.file());
    await addNote(tablet, jobId, 'said on the first');
    await addNote(other, jobId, 'said on the second');
    expect(await tablet.takeIn(await other.file())).toMatchObject({ ok: true, taken: { keptBeside: 1 } });
    expect(await other.takeIn(await tablet.file())).toMatchObject({
      ok: true,
      taken: { keptBeside: 1, alreadyHere: 1 },
    });
    for (const each of [tablet, other]) {
      const contents = await each.contents();
      expect(JSON.stringify(contents)).toContain('said on the first');
      expect(JSON.stringify(contents)).toContain('said on the second');
      expect(await each.takeIn(await tablet.file())).toMatchObject({ ok: true, taken: { alreadyHere: 2 } });
      expect(await each.takeIn(await other.file())).toMatchObject({ ok: true, taken: { alreadyHere: 2 } });
      expect(await each.contents()).toEqual(contents);
    }
    // The fork goes on, too: its next lines find the copy they belong to.
    await addNote(other, jobId, 'said on the second, later');
    expect(await tablet.takeIn(await other.file())).toMatchObject({
      ok: true,
      taken: { extended: 1, keptBeside: 0 },
    });
  });

  it('puts nothing under the hands of whoever writes the job', async () => {
    const { tablet, jobId } = await tabletWithAJob();
    const other = new Tablet(9_000_000);
    await other.takeIn(await tablet.file());
    await addNote(tablet, jobId, 'later');
    const file = await tablet.file();
    await other.use(async (records) => {
      const opened = kept(await records.openJob(jobId));
      expect(await records.takeInFile(file)).toMatchObject({ ok: true, taken: { keptBeside: 1 } });
      const appended = await opened?.log.append({
        event: { type: 'record.note', text: 'mine' },
        promptState: 'record',
      });
      expect(appended).toMatchObject({ kept: true });
    });
  });

  it('holds lines that could not be put on the disk', async () => {
    const { tablet } = await tabletWithAJob();
    const text = await tablet.use(async (records) => {
      const { log } = await records.startJob();
      const add = IDBObjectStore.prototype.add;
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
      await log.append({ event: { type: 'record.note', text: 'unsaved words' }, promptState: 'record' });
      IDBObjectStore.prototype.add = add;
      return kept(await records.saveToFile())?.text();
    });
    expect(text).toContain('unsaved words');
    expect(readBundle(text ?? '').ok).toBe(true);
  });

  it('can be cancelled', async () => {
    const { tablet } = await tabletWithAJob();
    const cancelled = await tablet.use((records) => records.saveToFile({ signal: AbortSignal.abort() }));
    expect(cancelled).toEqual({ ok: true, value: undefined });
  });
});

describe('a file that is not taken', () => {
  it('is refused whole wherever one letter of it is changed, and the store stays as it was', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(6));
    const file = await tablet.file();
    const other = new Tablet(1);
    await other.takeIn(await (await tabletWithAJob(straightWalk(2))).tablet.file());
    const before = await other.contents();
    await fc.assert(
      fc.asyncProperty(fc.nat(file.length - 2), async (at) => {
        const letter = file[at] === 'x' ? 'y' : 'x';
        const refused = await other.takeIn(file.slice(0, at) + letter + file.slice(at + 1));
        expect(refused.ok).toBe(false);
        expect(refused.ok ? '' : refused.sentence).toContain('as they were');
      }),
      { numRuns: 60 },
    );
    expect(await other.contents()).toEqual(before);
  });

  it('is refused when it was cut short, anywhere', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    const file = await tablet.file();
    fc.assert(
      fc.property(fc.nat(file.length - 2), (length) => {
        expect(readBundle(file.slice(0, length)).ok).toBe(false);
      }),
    );
  });

  it.each([
    ['', 'not a file of records'],
    ['{"kind":"shopping list"}', 'not a file of records'],
    ['{"format":"knotwright records","version":2,"jobs":[]}', 'newer version'],
  ])('is told what is wrong with %j', (text, reason) => {
    const refused = readBundle(text);
    expect(refused.ok ? '' : refused.reason).toContain(reason);
  });

  it('is told which field this app does not know', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    const file = (await tablet.file()).replace('"record.started"', '"record.dreamt"');
    const refused = readBundle(resealed(file));
    expect(refused.ok ? '' : refused.reason).toContain('jobs.0.entries.0.event');
  });

  it.each([
    ['a header that miscounts', (text: string) => text.replace(/"entryCount":\d+/, '"entryCount":99')],
    [
      'a job that begins twice',
      (text: string) => text.replace('{"type":"void.restarted"}', '{"type":"record.started"}'),
    ],
    ['one job twice', (text: string) => text.replace(/("jobs":\[\n)(.*)\n/, '$1$2,\n$2\n')],
  ])('is refused for %s, though its checksum is right', async (_what, spoil) => {
    const { tablet, jobId } = await tabletWithAJob(straightWalk(3));
    await tablet.use(async (records) => {
      const opened = kept(await records.openJob(jobId));
      await opened?.log.append({ event: { type: 'void.restarted' }, promptState: 'x' });
    });
    const file = await tablet.file();
    const spoiled = resealed(spoil(file));
    expect(spoiled).not.toBe(file);
    expect(readBundle(spoiled).ok).toBe(false);
  });
});

/** The file with the checksum its bytes now have. */
function resealed(file: string): string {
  const covered = file.slice(0, file.lastIndexOf('"crc32":'));
  return `${covered}"crc32":"${crc32Text(crc32(new TextEncoder().encode(covered)))}"}\n`;
}
