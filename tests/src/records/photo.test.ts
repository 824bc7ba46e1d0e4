import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesText } from '../../../src/records/log-part.ts';
import {
  MOST_PHOTO_BYTES,
  MOST_PHOTO_BYTES_A_FILE,
  MOST_PHOTOS_A_JOB,
  PHOTO_NOT_KEPT,
  type PhotoRow,
  photoFrom,
  photoText,
} from '../../../src/records/photo.ts';
import { bundleFile } from '../../../src/records/write-bundle.ts';
import { kept, Tablet } from './two-tablets.ts';

const PHOTO: Omit<PhotoRow, 'photoId'> = { type: 'image/jpeg', bytes: new Uint8Array([255, 216, 255, 0, 7]) };

/** Starts a job with photos; its id, and the ids of the photos as its log names them. */
function jobWithPhotos(tablet: Tablet, count: number) {
  return tablet.use(async (records) => {
    const { log } = await records.startJob();
    const said = [];
    for (let taken = 0; taken < count; taken++) {
      said.push(await records.keepPhoto(log, { of: 'newEnd', side: 'left' }, PHOTO));
    }
    const ids = log.entries.flatMap(({ event }) => (event.type === 'record.photo' ? [event.photoId] : []));
    return { said, ids, jobId: log.jobId };
  });
}

describe('a photo', () => {
  it('is on the disk, and the log of its job names it', async () => {
    const tablet = new Tablet(1_000);
    const { said, ids, jobId } = await jobWithPhotos(tablet, 2);
    expect(said).toEqual([undefined, undefined]);
    await tablet.use(async (records) => {
      const rows = kept(await records.photos(ids));
      expect(rows.map(({ bytes }) => [...bytes])).toEqual([[...PHOTO.bytes], [...PHOTO.bytes]]);
      const events = kept(await records.readJob(jobId))?.entries.map(({ event }) => event) ?? [];
      expect(events.slice(1)).toEqual(
        ids.map((photoId) => ({ type: 'record.photo', photoId, of: 'newEnd', side: 'left' })),
      );
    });
  });

  it('goes along in a file, and a file taken in twice changes nothing the second time', async () => {
    const [one, two] = [new Tablet(1_000), new Tablet(2_000)];
    const { ids } = await jobWithPhotos(one, 1);
    const file = await one.file();
    for (let time = 0; time < 2; time++) expect(await two.takeIn(file)).toMatchObject({ ok: true });
    const there = await two.use((records) => records.photos(ids));
    expect(kept(there).map(({ bytes }) => [...bytes])).toEqual([[...PHOTO.bytes]]);
    expect(await two.contents()).toEqual(await one.contents());
    // And on from there to a third.
    const three = new Tablet(3_000);
    expect(await three.takeIn(await two.file())).toMatchObject({ ok: true });
    expect(kept(await three.use((records) => records.photos(ids)))).toHaveLength(1);
  });

  it('left out of a file is counted in it, and whoever takes it in is told', async () => {
    const [one, two, three] = [new Tablet(1_000), new Tablet(2_000), new Tablet(3_000)];
    const { ids } = await jobWithPhotos(one, 3);
    const lines = await one.use(async (records) => {
      const [header] = kept(await records.allJobs());
      if (!header) throw new Error('A job was started.');
      return [{ header, lines: linesText(kept(await records.readJob(header.id))?.entries ?? []) }];
    });
    const size = Math.floor(MOST_PHOTO_BYTES_A_FILE / 2);
    async function* photos() {
      for (const photoId of ids) yield { ...PHOTO, photoId, bytes: new Uint8Array(size) };
    }
    const made = { tabletId: 'one', savedAtMs: 0, machines: [], jobs: [lines] };
    expect((await bundleFile({ ...made, photos })).photosLeftOut).toBe(1);
    const { file, photosLeftOut } = await bundleFile(made);
    expect(photosLeftOut).toBe(3);
    expect(await two.takeIn(await file.text())).toMatchObject({ ok: true, taken: { photosLeftOut: 3 } });
    // They are missing there, too, so that a file from there says so in its turn.
    expect(await three.takeIn(await two.file())).toMatchObject({ ok: true, taken: { photosLeftOut: 3 } });
  });

  it('of the largest size arrives byte for byte', async () => {
    const [one, two] = [new Tablet(1_000), new Tablet(2_000)];
    const bytes = Uint8Array.from({ length: MOST_PHOTO_BYTES }, (_, at) => at * 31 + (at >> 8));
    await one.use(async (records) => {
      const { log } = await records.startJob();
      expect(await records.keepPhoto(log, { of: 'oldEnd' }, { ...PHOTO, bytes })).toBeUndefined();
    });
    expect(await two.takeIn(await one.file())).toMatchObject({ ok: true, taken: { photosLeftOut: 0 } });
    const there = await two.use(async (records) => {
      const [job] = kept(await records.allJobs());
      const [, line] = kept(await records.readJob(job?.id ?? ''))?.entries ?? [];
      const photoId = line?.event.type === 'record.photo' ? line.event.photoId : '';
      return kept(await records.photos([photoId]))[0];
    });
    expect(Buffer.from(there?.bytes ?? []).equals(bytes)).toBe(true);
  });

  it('that is not on this tablet is missing, and the rest is there', async () => {
    const tablet = new Tablet(1_000);
    const { ids } = await jobWithPhotos(tablet, 1);
    const rows = kept(await tablet.use((records) => records.photos(['nowhere', ...ids])));
    expect(rows.map(({ photoId }) => photoId)).toEqual(ids);
  });

  it('one too many, an empty one and one too large are refused in a sentence, and leave no trace', async () => {
    const tablet = new Tablet(1_000);
    const { said, ids } = await jobWithPhotos(tablet, MOST_PHOTOS_A_JOB + 1);
    expect(said.at(-1)).toMatch(/keeps 12 photos at most/);
    expect(ids).toHaveLength(MOST_PHOTOS_A_JOB);
    await tablet.use(async (records) => {
      const { log } = await records.startJob();
      const empty = { ...PHOTO, bytes: new Uint8Array() };
      expect(await records.keepPhoto(log, { of: 'machine' }, empty)).toMatch(/empty photo/);
      const large = { ...PHOTO, bytes: new Uint8Array(MOST_PHOTO_BYTES + 1) };
      expect(await records.keepPhoto(log, { of: 'machine' }, large)).toMatch(/too large/);
      expect(log.entries).toHaveLength(1);
    });
  });

  it('that finds no room says so, and its job goes on without it', async () => {
    const tablet = new Tablet(1_000);
    await tablet.use(async (records) => {
      const { log } = await records.startJob();
      const add = IDBObjectStore.prototype.add;
      IDBObjectStore.prototype.add = function (...given) {
        if (this.name === 'photos') throw new DOMException('no room', 'QuotaExceededError');
        return add.apply(this, given);
      };
      try {
        expect(await records.keepPhoto(log, { of: 'oldEnd' }, PHOTO)).toBe(PHOTO_NOT_KEPT);
      } finally {
        IDBObjectStore.prototype.add = add;
      }
      expect(log.entries.map(({ event }) => event.type)).toEqual(['record.started']);
      expect(
        await log.append({ event: { type: 'record.note', text: 'on' }, promptState: 'record' }),
      ).toMatchObject({ kept: true });
    });
  });

  it('is the same after it was text', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 20_000 }), (bytes) => {
        const row: PhotoRow = { photoId: 'a', type: 'image/png', bytes: new Uint8Array(bytes) };
        expect(photoFrom(photoText(row))).toEqual(row);
      }),
      { numRuns: 20 },
    );
  });
});
