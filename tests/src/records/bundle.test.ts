import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32, crc32Text } from '../../../src/records/crc32.ts';
import { type Bundle, readBundle } from '../../../src/records/read-bundle.ts';
import { jobCsv, jobsCsv } from '../../../src/report/csv.ts';
import { makeCard } from '../../../src/report/make-card.ts';
import { straightWalk, walk } from './random-job.ts';
import { kept, readText, Tablet, write } from './two-tablets.ts';

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
      taken: {
        newJobs: 1,
        extended: 0,
        keptBeside: 0,
        alreadyHere: 0,
        machineRevisions: 1,
        photosLeftOut: 0,
        latestOrder: expect.any(Number),
      },
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
      expect(await records.takeInFile(new Blob([file]))).toMatchObject({
        ok: true,
        taken: { keptBeside: 1 },
      });
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
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
      await log.append({ event: { type: 'record.note', text: 'unsaved words' }, promptState: 'record' });
      IDBObjectStore.prototype.put = put;
      return kept(await records.saveToFile())?.file.text();
    });
    expect(text).toContain('unsaved words');
    expect((await readText(text ?? '')).ok).toBe(true);
  });

  it('comes out of the other tablet with the same bytes, but for who saved it and the checksum', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.nat(9_999), { maxLength: 40 }), { maxLength: 4 }),
        async (jobs) => {
          const tablet = new Tablet(1_000_000);
          await tablet.use(async (records) => {
            await records.saveMachine(PROFILE);
            for (const choices of jobs) await write((await records.startJob()).log, walk(choices));
          });
          const file = await tablet.file();
          const other = new Tablet(5);
          expect(await other.takeIn(file)).toMatchObject({ ok: true, taken: { newJobs: jobs.length } });
          const [saved, savedAgain] = [file, await other.file()].map((text) => text.split('\n'));
          expect(savedAgain?.slice(1, -2)).toEqual(saved?.slice(1, -2));
        },
      ),
      { numRuns: 10 },
    );
  });

  it('is found by a search at once and later, though its jobs are older than a list that was kept', async () => {
    const home = new Tablet(9_000_000);
    await home.use(async (records) => {
      for (let job = 0; job < 205; job++) await records.startJob({ person: 'HM' });
      kept(await records.findJobs({ words: 'hm', limit: 1 }));
    });
    const { tablet } = await tabletWithAJob(straightWalk(4));
    const search = () => home.use(async (records) => kept(await records.findJobs({ words: 'rb', limit: 9 })));
    expect(await search()).toEqual([]);
    expect(await home.takeIn(await tablet.file())).toMatchObject({ ok: true, taken: { newJobs: 1 } });
    expect(await search()).toHaveLength(1);
  });

  it('is read as version 1 laid it out, too', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    const file = (await tablet.file())
      .replace('"version":2', '"version":1')
      .replace('"photos":[\n],\n"photosLeftOut":0,\n', '');
    const other = new Tablet(1);
    expect(await other.takeIn(resealed(file))).toMatchObject({ ok: true, taken: { newJobs: 1 } });
    expect(await other.contents()).toEqual(await tablet.contents());
  });

  it('tells how far it is while it is taken in, and leaves nothing where that is stopped on the way', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    await tablet.use(async (records) => {
      for (let job = 0; job < 149; job++) await records.startJob();
    });
    const file = new Blob([await tablet.file()]);
    const other = (await tabletWithAJob(straightWalk(2))).tablet;
    const before = await other.contents();
    for (const stopIn of ['checking', 'takingIn'] as const) {
      const abort = new AbortController();
      const progress = (stage: string) => stage === stopIn && abort.abort();
      const took = await other.use((records) => records.takeInFile(file, { signal: abort.signal, progress }));
      expect(took).toMatchObject({ ok: false, sentence: expect.stringContaining('was stopped') });
      expect(await other.contents()).toEqual(before);
    }
    const told: (readonly [string, number])[] = [];
    const took = await other.use((records) =>
      records.takeInFile(file, { progress: (stage, share) => told.push([stage, share]) }),
    );
    expect(took).toMatchObject({ ok: true, taken: { newJobs: 150 } });
    for (const stage of ['checking', 'takingIn']) {
      const shares = told.filter(([each]) => each === stage).map(([, share]) => share);
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
      expect(shares.at(-1)).toBeGreaterThan(0.9);
      expect(shares.at(-1)).toBeLessThanOrEqual(1);
    }
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

  it('is taken the same or refused whole, whatever became of one of its bytes or of its end', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(6));
    const bytes = new TextEncoder().encode(await tablet.file());
    const pristine = await readBundle(bytes);
    if (!pristine.ok) throw new Error(pristine.reason);
    const other = (await tabletWithAJob(straightWalk(2))).tablet;
    const before = await other.contents();
    const flipped = fc.tuple(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 })).map(([at, bits]) => {
      const spoiled = bytes.slice();
      spoiled[at] = (spoiled[at] ?? 0) ^ bits;
      return spoiled;
    });
    const lastBytes = fc.integer({ min: 1, max: 255 }).map((bits) => {
      const spoiled = bytes.slice();
      spoiled[bytes.length - 1] = (spoiled.at(-1) ?? 0) ^ bits;
      return spoiled;
    });
    const cut = fc
      .oneof(fc.nat(bytes.length - 1), fc.integer({ min: bytes.length - 30, max: bytes.length - 1 }))
      .map((length) => bytes.slice(0, length));
    await fc.assert(
      fc.asyncProperty(fc.oneof(flipped, lastBytes, cut), async (spoiled) => {
        const read = await readBundle(spoiled);
        if (read.ok) {
          expect(contentOf(read.bundle)).toEqual(contentOf(pristine.bundle));
          return;
        }
        expect(await other.takeIn(spoiled)).toEqual({ ok: false, sentence: read.reason });
        expect(read.reason).toContain('as they were');
      }),
      { numRuns: 300 },
    );
    expect(await other.contents()).toEqual(before);
  });

  it('is refused whole, or can be shown, whatever value was put into it by hand', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(20));
    const file = await tablet.file();
    const places = [...file.matchAll(/:("[^"]*"|-?[\d.]+)(?=[,}\]])/g)].map(({ index }) => index);
    const values = fc.constantFrom(
      'null',
      '-1',
      '1e99',
      '0.5',
      '""',
      '"x"',
      '[]',
      '{}',
      '"symptom.twoBalls"',
    );
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...places), values, async (place, value) => {
        const rest = file.slice(place).replace(/^:("[^"]*"|-?[\d.]+)/, `:${value}`);
        const other = new Tablet(1);
        const before = await other.contents();
        const took = await other.takeIn(resealed(file.slice(0, place) + rest));
        if (!took.ok) {
          expect(took.sentence).toContain('as they were');
          expect(await other.contents()).toEqual(before);
          return;
        }
        await other.use(async (records) => {
          const headers = kept(await records.allJobs());
          expect(jobsCsv(headers, new Map())).toContain('\r\n');
          for (const { id } of headers) {
            const entries = kept(await records.readJob(id))?.entries ?? [];
            expect(jobCsv(makeCard({ entries }))).toContain('\r\n');
            expect(kept(await records.openJob(id))?.log.entries).toEqual(entries);
          }
        });
      }),
      { numRuns: 150 },
    );
  });

  it('is refused in a sentence where the tablet cannot read it', async () => {
    const gone = new Blob(['x']);
    gone.arrayBuffer = () => Promise.reject(new DOMException('', 'NotReadableError'));
    const refused = await new Tablet(1).use((records) => records.takeInFile(gone));
    expect(refused).toEqual({
      ok: false,
      sentence: expect.stringMatching(/cannot be read.*as they were\.$/),
    });
  });

  it('is refused when it was cut short, anywhere', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    const file = await tablet.file();
    await fc.assert(
      fc.asyncProperty(fc.nat(file.length - 2), async (length) => {
        expect((await readText(file.slice(0, length))).ok).toBe(false);
      }),
    );
  });

  it.each([
    ['', 'not a file of records'],
    ['{"kind":"shopping list"}', 'not a file of records'],
    ['{"format":"knotwright records","version":3,"jobs":[]}', 'newer version'],
  ])('is told what is wrong with %j', async (text, reason) => {
    const refused = await readText(text);
    expect(refused.ok ? '' : refused.reason).toContain(reason);
  });

  it('is told which field this app does not know', async () => {
    const { tablet } = await tabletWithAJob(straightWalk(3));
    const file = (await tablet.file()).replace('"record.started"', '"record.dreamt"');
    const refused = await readText(resealed(file));
    expect(refused.ok ? '' : refused.reason).toContain('jobs.0.entries.0.event');
  });

  it.each([
    ['a place in the list past every other', (text: string) => text.replace(/"order":\d+/, '"order":1e16')],
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
    expect((await readText(spoiled)).ok).toBe(false);
  });
});

/** Everything a file holds, all at once. */
function contentOf({ machines, jobCount, photoCount, photosLeftOut, job, photo }: Bundle): object {
  return {
    machines,
    photosLeftOut,
    jobs: Array.from({ length: jobCount }, (_, place) => job(place)),
    photos: Array.from({ length: photoCount }, (_, place) => photo(place)),
  };
}

/** The file with the checksum its bytes now have. */
function resealed(file: string): string {
  const covered = file.slice(0, file.lastIndexOf('"crc32":'));
  return `${covered}"crc32":"${crc32Text(crc32(new TextEncoder().encode(covered)))}"}\n`;
}
