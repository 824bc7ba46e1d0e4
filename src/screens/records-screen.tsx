import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { JobHeader } from '../records/job-header.ts';
import type { Records } from '../records/records.ts';
import type { Kept } from '../records/trouble.ts';
import { FileExchange } from '../report/file-exchange.tsx';
import { jobTitle, statusWord, whenText } from './job-words.ts';
import { Page } from './page.tsx';
import { hashOf } from './route.ts';

const MOST_SHOWN = 60;

/** Every job on this tablet, newest first, and a search through what was said in them. */
export function RecordsScreen({ records }: { readonly records: Kept<Records> }): JSX.Element {
  const words = useSignal('');
  const found = useSignal<readonly JobHeader[]>([]);
  const problem = useSignal(records.ok ? '' : records.trouble.sentence);
  const wanted = words.value;
  useEffect(() => {
    if (!records.ok) return;
    let isLatest = true;
    void records.value.findJobs({ words: wanted, limit: MOST_SHOWN }).then((jobs) => {
      if (!isLatest) return;
      if (jobs.ok) found.value = jobs.value;
      else problem.value = jobs.trouble.sentence;
    });
    return () => {
      isLatest = false;
    };
  }, [records, wanted]);
  return (
    <Page title="Records">
      {problem.value === '' ? null : (
        <p class="trouble" role="alert">
          {problem.value}
        </p>
      )}
      <label class="page-form">
        Find words that were said
        <input
          type="text"
          autocomplete="off"
          value={wanted}
          onInput={(event) => {
            words.value = event.currentTarget.value;
          }}
        />
      </label>
      <p role="status">{countWords(found.value.length)}</p>
      <ul class="job-list">
        {found.value.map((job) => (
          <li key={job.id}>
            <a
              href={hashOf(
                job.status === 'open' ? { page: 'job', jobId: job.id } : { page: 'record', jobId: job.id },
              )}
            >
              <b>{jobTitle(job)}</b>
              <span>
                {statusWord(job)} · {whenText(job.lastAtMs)}
              </span>
            </a>
          </li>
        ))}
      </ul>
      {records.ok ? <FileExchange records={records.value} /> : null}
    </Page>
  );
}

function countWords(count: number): string {
  if (count === 0) return 'No job found.';
  return count === 1 ? 'One job.' : `${count} jobs${count === MOST_SHOWN ? ', the newest' : ''}.`;
}
