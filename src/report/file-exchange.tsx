import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { MOST_PHOTO_BYTES_A_FILE } from '../records/photo.ts';
import type { Records, TookIn } from '../records/records.ts';
import { jobsCsv } from './csv.ts';
import { handOut } from './hand-out.ts';
import './file-exchange.css';

const STAGES = { checking: 'Checking the file', takingIn: 'Taking it in' } as const;

/** Records out to a file and in from one: for another tablet, for a spreadsheet, for safe keeping. */
export function FileExchange({ records }: { readonly records: Records }): JSX.Element {
  const told = useSignal('');
  const running = useSignal<AbortController | undefined>(undefined);

  const save = async () => {
    const abort = new AbortController();
    running.value = abort;
    const saved = await records.saveToFile({
      signal: abort.signal,
      progress: (done, of) => {
        told.value = `${done} of ${of} jobs are in the file.`;
      },
    });
    running.value = undefined;
    if (!saved.ok) told.value = saved.trouble.sentence;
    else if (!saved.value) told.value = 'No file was made.';
    else {
      const { file, photosLeftOut } = saved.value;
      told.value = `${outcomeText(file.name, await handOut(file))}${leftOutText(photosLeftOut)}`;
    }
  };

  const saveTable = async () => {
    const [jobs, machines] = await Promise.all([records.allJobs(), records.machines()]);
    if (!jobs.ok) told.value = jobs.trouble.sentence;
    else if (!machines.ok) told.value = machines.trouble.sentence;
    else {
      const names = new Map(machines.value.map(({ machineId, profile }) => [machineId, profile.name]));
      const file = new File([jobsCsv(jobs.value, names)], 'knotwright-jobs.csv', { type: 'text/csv' });
      told.value = outcomeText(file.name, await handOut(file));
    }
  };

  const takeIn = async (file: File | undefined) => {
    if (!file) return;
    const abort = new AbortController();
    running.value = abort;
    told.value = `Reading ${file.name}.`;
    const took = await records.takeInFile(file, {
      signal: abort.signal,
      progress: (stage, share) => {
        told.value = `${STAGES[stage]}: ${Math.floor(share * 100)} percent.`;
      },
    });
    running.value = undefined;
    told.value = takenText(took);
  };

  return (
    <section class="no-print" aria-label="Files">
      <h2>Files</h2>
      <div class="choice-row">
        {running.value ? (
          <button type="button" onClick={() => running.value?.abort()}>
            Stop
          </button>
        ) : (
          <button type="button" onClick={() => void save()}>
            Save everything for another tablet
          </button>
        )}
        <button type="button" onClick={() => void saveTable()}>
          Save the list as a table
        </button>
      </div>
      <label class="page-form">
        Take in a file from another tablet
        <input
          type="file"
          accept="application/json,.json"
          disabled={running.value !== undefined}
          onChange={(event) => {
            void takeIn(event.currentTarget.files?.[0]);
            // The same file chosen again is a new choice.
            event.currentTarget.value = '';
          }}
        />
      </label>
      <p>
        Photos go along, up to {MOST_PHOTO_BYTES_A_FILE / 1_000_000} megabytes of them in one file. The file
        says how many were left out, and the job card where.
      </p>
      <p role="status">{told.value}</p>
    </section>
  );
}

/** What taking in a file did, in a sentence. */
export function takenText(took: TookIn): string {
  if (!took.ok) return took.sentence;
  const { newJobs, extended, keptBeside, alreadyHere, machineRevisions, photosLeftOut } = took.taken;
  const parts = [
    count(newJobs, 'new job', 'new jobs'),
    count(extended, 'job that goes on', 'jobs that go on'),
    count(keptBeside, 'job that went two ways, both kept', 'jobs that went two ways, both kept'),
    count(machineRevisions, 'state of a baler', 'states of balers'),
    count(alreadyHere, 'job that was here already', 'jobs that were here already'),
  ].filter(Boolean);
  const taken = parts.length === 0 ? 'The file holds no job.' : `Taken in: ${parts.join(', ')}.`;
  return `${taken}${leftOutText(photosLeftOut)}`;
}

/** What is told of photos that are not in a file, after a sentence of what is. */
function leftOutText(photos: number): string {
  const left = count(photos, 'photo is', 'photos are');
  return left && ` ${left} not in the file; the tablet where they were taken has them.`;
}

function count(number: number, one: string, many: string): string {
  if (number === 0) return '';
  return `${number} ${number === 1 ? one : many}`;
}

function outcomeText(name: string, outcome: Awaited<ReturnType<typeof handOut>>): string {
  switch (outcome) {
    case 'shared':
      return `${name} was shared.`;
    case 'saved':
      return `${name} is among the downloads.`;
    case 'cancelled':
      return `${name} was not shared.`;
  }
}
