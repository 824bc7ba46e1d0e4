import { type ReadonlySignal, type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { JobSnapshot } from '../flows/prompt.ts';
import './app.css';
import type { FieldModelOffer } from './offline/field-model.ts';
import type { Installed } from './offline/installed.ts';
import type { VoiceAtHand } from './offline/voice-at-hand.ts';
import type { JobLog } from './records/job-log.ts';
import type { Learnt } from './records/learnt.ts';
import { type JobAbout, type Records, unkeptJobLog } from './records/records.ts';
import type { Kept } from './records/trouble.ts';
import { DrillScreen, type DrillTalk } from './screens/drill-screen.tsx';
import type { HearingChecker } from './screens/hearing-check.ts';
import { HelpScreen } from './screens/help-screen.tsx';
import { JobScreen } from './screens/job-screen.tsx';
import { LearntScreen } from './screens/learnt-screen.tsx';
import { MachinesScreen } from './screens/machines-screen.tsx';
import { NewJobScreen } from './screens/new-job-screen.tsx';
import { Page } from './screens/page.tsx';
import type { KeepPhoto } from './screens/photo-taker.tsx';
import type { Preferences } from './screens/preferences.ts';
import { RecordScreen } from './screens/record-screen.tsx';
import { RecordsScreen } from './screens/records-screen.tsx';
import { goTo, type Route } from './screens/route.ts';
import { SettingsScreen } from './screens/settings-screen.tsx';
import { StartScreen } from './screens/start-screen.tsx';
import { WelcomeScreen } from './screens/welcome-screen.tsx';
import type { DrillOptions } from './session/drill-session.ts';
import type { Conversation } from './session/view.ts';

/** A job whose log is open, ready to be talked about. */
export interface JobToTalkAbout {
  readonly log: JobLog;
  /** Where the log leads; missing for a new job. Whoever talks on voids the lockout first. */
  readonly from?: JobSnapshot;
}

/** What the screens are given: the records, or why there are none, and a way to talk about a job. */
export interface Services {
  readonly records: Kept<Records>;
  readonly installed: ReadonlySignal<Installed>;
  readonly voiceAtHand: ReadonlySignal<VoiceAtHand>;
  readonly fieldModel: FieldModelOffer;
  /** Names of the voices the tablet itself has. */
  readonly ownVoices: readonly string[];
  readonly learnt: Signal<Learnt>;
  makeChecker(): HearingChecker;
  converse(job: JobToTalkAbout): Promise<Conversation>;
  /** Runs a drill; must be called from a tap. */
  startDrill(options: DrillOptions): DrillTalk;
}

interface AppProps {
  readonly services: Services;
  readonly route: ReadonlySignal<Route>;
  readonly preferences: Signal<Preferences>;
}

/** The whole app: one page at a time, by the address. A job that is left stays on the disk and can be resumed. */
export function App({ services, route, preferences }: AppProps): JSX.Element {
  const running = useSignal<{ readonly jobId: string; readonly conversation: Conversation } | undefined>(
    undefined,
  );
  const here = route.value;

  const talk = async (job: JobToTalkAbout) => {
    const from = route.value;
    const { jobId } = job.log;
    running.value?.conversation.dispose();
    const conversation = await services.converse(job);
    if (route.value !== from) {
      // Whoever went elsewhere meanwhile is not called back.
      conversation.dispose();
      if (services.records.ok) services.records.value.leaveJob(jobId);
      return;
    }
    running.value = { jobId, conversation };
    goTo({ page: 'job', jobId });
  };
  const begin = async (about: JobAbout, first?: 'count') => {
    const { records } = services;
    const log = records.ok ? (await records.value.startJob(about)).log : unkeptJobLog(records.trouble);
    await talk({ log });
    if (first === 'count') running.value?.conversation.press('count.open');
  };

  const job = running.value;
  useEffect(() => {
    const left = running.value;
    if (here.page === 'job' || !left) return;
    left.conversation.dispose();
    if (services.records.ok) services.records.value.leaveJob(left.jobId);
    running.value = undefined;
  }, [here.page]);

  // Another tab has the records, the microphone and the job: this one stands back until it is gone.
  if (!services.records.ok && services.records.trouble.kind === 'otherTab') {
    return <StandBack sentence={services.records.trouble.sentence} />;
  }

  switch (here.page) {
    case 'start':
      return preferences.value.wasWelcomed ? (
        <StartScreen {...services} />
      ) : (
        <WelcomeScreen preferences={preferences} makeChecker={services.makeChecker} />
      );
    case 'new':
      return <NewJobScreen records={services.records} onBegin={begin} />;
    case 'job':
      return job?.jobId === here.jobId ? (
        <JobScreen
          conversation={job.conversation}
          units={preferences.value.units}
          keepPhoto={services.records.ok ? keepPhotoOf(services.records.value, job.jobId) : undefined}
          onLeave={() => goTo({ page: 'start' })}
          onFinish={() => goTo({ page: 'record', jobId: job.jobId })}
        />
      ) : (
        <Resume key={here.jobId} records={services.records} jobId={here.jobId} onOpened={talk} />
      );
    case 'records':
      return <RecordsScreen records={services.records} />;
    case 'record':
      return <RecordScreen records={services.records} jobId={here.jobId} />;
    case 'machines':
      return <MachinesScreen records={services.records} />;
    case 'settings':
      return <SettingsScreen preferences={preferences} {...services} />;
    case 'learnt':
      return <LearntScreen learnt={services.learnt} />;
    case 'drill':
      return <DrillScreen units={preferences.value.units} startDrill={services.startDrill} />;
    case 'help':
      return <HelpScreen />;
    case 'welcome':
      return <WelcomeScreen preferences={preferences} makeChecker={services.makeChecker} />;
  }
}

/** All that a second tab shows. */
function StandBack({ sentence }: { readonly sentence: string }): JSX.Element {
  return (
    <main class="page">
      <h1>Open in another tab</h1>
      <p class="trouble" role="alert">
        {sentence}
      </p>
      <button type="button" class="page-go" onClick={() => location.reload()}>
        Try again
      </button>
    </main>
  );
}

/** Attaches photos to the job that runs, whose log is open. */
function keepPhotoOf(records: Records, jobId: string): KeepPhoto {
  return async (about, photo) => {
    const opened = await records.openJob(jobId);
    if (!opened.ok) return opened.trouble.sentence;
    return opened.value
      ? records.keepPhoto(opened.value.log, about, photo)
      : 'This job is not on this tablet, so the photo was not kept.';
  };
}

interface ResumeProps {
  readonly records: Kept<Records>;
  readonly jobId: string;
  onOpened(job: JobToTalkAbout): void;
}

/** Opens a job of the records and goes on with it, or says why it cannot. */
function Resume({ records, jobId, onOpened }: ResumeProps): JSX.Element {
  const problem = useSignal(records.ok ? '' : records.trouble.sentence);
  useEffect(() => {
    if (!records.ok) return undefined;
    let isLeft = false;
    void records.value.openJob(jobId).then((opened) => {
      if (isLeft) records.value.leaveJob(jobId);
      else if (!opened.ok) problem.value = opened.trouble.sentence;
      else if (!opened.value) problem.value = 'This job is not on this tablet. The others are under Records.';
      else onOpened({ log: opened.value.log, from: opened.value.replayed.snapshot });
    });
    return () => {
      isLeft = true;
    };
  }, [records, jobId]);
  return (
    <Page title={problem.value === '' ? 'Opening the job' : 'The job does not open'}>
      <p role="status">{problem.value}</p>
    </Page>
  );
}
