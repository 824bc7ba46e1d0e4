import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Installed } from '../offline/installed.ts';
import type { VoiceAtHand } from '../offline/voice-at-hand.ts';
import type { JobHeader } from '../records/job-header.ts';
import type { Records } from '../records/records.ts';
import type { Kept } from '../records/trouble.ts';
import { Cautions } from './cautions.tsx';
import { jobTitle, whenText } from './job-words.ts';
import { KnotMark } from './knot-mark.tsx';
import { Readiness } from './readiness.tsx';
import { hashOf } from './route.ts';
import './start-screen.css';

/** Open jobs shown; more are found among the records. */
const MOST_OPEN = 4;
/** Jobs looked through for open ones. */
const LATEST = 40;

interface StartScreenProps {
  readonly records: Kept<Records>;
  readonly installed: ReadonlySignal<Installed>;
  readonly voiceAtHand: ReadonlySignal<VoiceAtHand>;
}

/** Where the app opens: a new job, what is still open, and the cautions that come before both. */
export function StartScreen({ records, installed, voiceAtHand }: StartScreenProps): JSX.Element {
  const open = useSignal<readonly JobHeader[]>([]);
  const problem = useSignal(records.ok ? '' : records.trouble.sentence);
  useEffect(() => {
    if (!records.ok) return;
    void records.value.findJobs({ words: '', limit: LATEST }).then((found) => {
      if (found.ok) open.value = found.value.filter(({ status }) => status === 'open').slice(0, MOST_OPEN);
      else problem.value = found.trouble.sentence;
    });
  }, [records]);
  return (
    <main class="page start">
      <header class="start-head">
        <KnotMark />
        <h1>Knotwright</h1>
        <p>Finds what ails a twine knotter. Ask aloud, answer aloud.</p>
      </header>
      {problem.value === '' ? null : (
        <p class="trouble" role="alert">
          {problem.value}
        </p>
      )}
      <a class="start-new" href={hashOf({ page: 'new' })}>
        New job
      </a>
      {open.value.length > 0 ? (
        <section aria-label="Open jobs">
          <h2>Still open</h2>
          <ul class="job-list">
            {open.value.map((job) => (
              <li key={job.id}>
                <a href={hashOf({ page: 'job', jobId: job.id })}>
                  <b>{jobTitle(job)}</b>
                  <span>{whenText(job.lastAtMs)}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <Cautions />
      <Readiness installed={installed} voiceAtHand={voiceAtHand} />
      <nav class="choice-row" aria-label="More">
        <a class="link-button" href={hashOf({ page: 'records' })}>
          Records
        </a>
        <a class="link-button" href={hashOf({ page: 'drill' })}>
          Drill
        </a>
        <a class="link-button" href={hashOf({ page: 'help' })}>
          Help
        </a>
        <a class="link-button" href={hashOf({ page: 'settings' })}>
          Settings
        </a>
      </nav>
    </main>
  );
}
