import { useSignal } from '@preact/signals';
import type { ComponentType, JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Side } from '../../grammar/sides.ts';
import type { Records } from '../records/records.ts';
import type { Kept } from '../records/trouble.ts';
import type { JobCard } from '../report/card.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { Page } from './page.tsx';
import { type KeepPhoto, PhotoTaker } from './photo-taker.tsx';

/** The report, loaded when a record is opened: nobody needs it while a job runs. */
interface Report {
  readonly card: JobCard;
  /** The photos that are on this tablet, by their ids. */
  readonly photoUrls: ReadonlyMap<string, string>;
  readonly JobCardSheet: ComponentType<{ card: JobCard; photoUrls: ReadonlyMap<string, string> }>;
  readonly HandOverSheet: ComponentType<{ card: JobCard }>;
  saveTable(): Promise<unknown>;
}

interface RecordScreenProps {
  readonly records: Kept<Records>;
  readonly jobId: string;
}

/** One finished job as a card, or as the one page that goes to whoever takes over; either can be printed. */
export function RecordScreen({ records, jobId }: RecordScreenProps): JSX.Element {
  const report = useSignal<Report | undefined>(undefined);
  const problem = useSignal(records.ok ? '' : records.trouble.sentence);
  const sheet = useSignal<'card' | 'handOver'>('card');
  const show = async () => {
    if (!records.ok) return;
    const opened = await openReport(records.value, jobId);
    if (typeof opened === 'string') {
      problem.value = opened;
      return;
    }
    forgetPhotos(report.value);
    report.value = opened;
  };
  useEffect(() => {
    void show();
    return () => forgetPhotos(report.value);
  }, [records, jobId]);
  const keepPhoto: KeepPhoto = async (about, photo) => {
    if (!records.ok) return records.trouble.sentence;
    const trouble = await keepPhotoOf(records.value, jobId, about, photo);
    await show();
    return trouble;
  };
  const shown = report.value;
  return (
    <Page title="Job card">
      {problem.value === '' ? null : (
        <p class="trouble" role="alert">
          {problem.value}
        </p>
      )}
      {shown ? (
        <>
          <div class="choice-row no-print">
            <ChoiceGroup
              legend="Show"
              options={[
                { value: 'card', label: 'Everything' },
                { value: 'handOver', label: 'One page to hand over' },
              ]}
              chosen={sheet.value}
              onChoose={(value) => {
                sheet.value = value;
              }}
            />
            <button type="button" onClick={() => print()}>
              Print
            </button>
            <button type="button" onClick={() => void shown.saveTable()}>
              Save as a table
            </button>
          </div>
          <PhotoTaker keep={keepPhoto} side={oneSide(shown.card)} />
          {sheet.value === 'card' ? (
            <shown.JobCardSheet card={shown.card} photoUrls={shown.photoUrls} />
          ) : (
            <shown.HandOverSheet card={shown.card} />
          )}
        </>
      ) : (
        <p role="status">{problem.value === '' ? 'Reading the record.' : ''}</p>
      )}
    </Page>
  );
}

/** @returns the report, or a sentence that says why there is none */
async function openReport(records: Records, jobId: string): Promise<Report | string> {
  const [kept, machines, { makeCard }, { JobCardSheet }, { HandOverSheet }, { jobCsv }, { handOut }] =
    await Promise.all([
      records.readJob(jobId),
      records.machines(),
      import('../report/make-card.ts'),
      import('../report/job-card.tsx'),
      import('../report/hand-over-sheet.tsx'),
      import('../report/csv.ts'),
      import('../report/hand-out.ts'),
    ]);
  if (!kept.ok) return kept.trouble.sentence;
  if (!kept.value) return 'This job is not on this tablet. The others are under Records.';
  const { header, entries } = kept.value;
  const machine = machines.ok
    ? machines.value.find(({ machineId }) => machineId === header.machineId)?.profile
    : undefined;
  const card = makeCard({ entries, ...(machine ? { machine } : {}) });
  const saveTable = () =>
    handOut(new File([jobCsv(card)], `knotwright-job-${jobId.slice(0, 8)}.csv`, { type: 'text/csv' }));
  const photos = await records.photos(card.photos.map(({ photoId }) => photoId));
  if (!photos.ok) return photos.trouble.sentence;
  const photoUrls = new Map(
    photos.value.map(({ photoId, type, bytes }) => [
      photoId,
      URL.createObjectURL(new Blob([bytes], { type })),
    ]),
  );
  return { card, photoUrls, JobCardSheet, HandOverSheet, saveTable };
}

/** The side a job is about, where it is one. */
function oneSide({ side }: JobCard): Side | undefined {
  return side === 'left' || side === 'right' ? side : undefined;
}

/** Frees what the browser holds for the photos of a report that is shown no more. */
function forgetPhotos(report: Report | undefined): void {
  for (const url of report?.photoUrls.values() ?? []) URL.revokeObjectURL(url);
}

/** Opens the job's log for the one line that names the photo. */
async function keepPhotoOf(
  records: Records,
  jobId: string,
  ...photo: Parameters<KeepPhoto>
): Promise<string | undefined> {
  const opened = await records.openJob(jobId);
  if (!opened.ok) return opened.trouble.sentence;
  if (!opened.value) return 'This job is not on this tablet. The others are under Records.';
  const trouble = await records.keepPhoto(opened.value.log, ...photo);
  records.leaveJob(jobId);
  return trouble;
}
