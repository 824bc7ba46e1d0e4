import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Records } from '../records/records.ts';
import './machine-numbers.css';

interface LastReadingsProps {
  readonly records: Records;
  readonly machineId: string;
  readonly name: string;
}

/** Jobs of one machine that are looked through; what was measured longer ago says little of it now. */
const MOST_JOBS = 20;

/** What was measured last on a baler, from its jobs on this tablet. */
export function LastReadings({ records, machineId, name }: LastReadingsProps): JSX.Element {
  const lines = useSignal<readonly string[] | undefined>(undefined);
  useEffect(() => {
    void readingLines(records, machineId, name).then((read) => {
      lines.value = read;
    });
  }, [records, machineId]);
  return (
    <details class="machine-numbers">
      <summary>Last readings</summary>
      {lines.value?.length === 0 ? <p>Nothing was measured on it yet.</p> : null}
      <ul role="status">
        {lines.value?.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}

/** One line a value, or one sentence on why there is none. */
async function readingLines(records: Records, machineId: string, name: string): Promise<readonly string[]> {
  const [found, { lastReadings, readingText }] = await Promise.all([
    records.findJobs({ words: name, limit: MOST_JOBS }),
    import('../report/last-readings.ts'),
  ]);
  if (!found.ok) return [found.trouble.sentence];
  const jobs = await Promise.all(
    found.value.filter((job) => job.machineId === machineId).map(({ id }) => records.readJob(id)),
  );
  return lastReadings(jobs.flatMap((job) => (job.ok && job.value ? [job.value.entries] : []))).map(
    readingText,
  );
}
