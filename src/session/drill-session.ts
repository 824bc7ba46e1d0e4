import { type ReadonlySignal, signal } from '@preact/signals';
import {
  arrive,
  beginDrill,
  type DrillState,
  judge,
  nextDueMs,
  shownNow,
  timePassed,
} from '../../flows/drill/drill.ts';
import type { Finding } from '../../flows/drill/finding.ts';
import type { DrillSetup } from '../../flows/drill/hidden-fault.ts';
import { narrated } from '../../flows/drill/narrate.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import { JobLog } from '../records/job-log.ts';
import { replay } from '../records/replay.ts';
import { type JobSession, runJob } from './job-session.ts';

/** A drill is a job like any other, whose machine is played and whose log is kept nowhere. */
export interface DrillSession extends JobSession {
  readonly drill: ReadonlySignal<DrillState>;
  /** What the machine shows now, where that is judged by eye. */
  readonly seen: () => Finding | undefined;
}

/** Whether what is seen can be drawn. */
function hasPicture(finding: Finding): boolean {
  return finding.kind === 'seen' && answerPicture(finding.meaning) !== undefined;
}

/** @param nowMs a clock that never goes back */
export function runDrill(setup: DrillSetup, nowMs: () => number = () => performance.now()): DrillSession {
  const job = runJob(drillLog());
  const drill = signal(arrive(beginDrill(setup), job.prompt(), nowMs()));
  const happenings = signal(0);
  let timer: ReturnType<typeof setTimeout> | undefined;

  const moveTo = (next: DrillState) => {
    drill.value = next;
    clearTimeout(timer);
    const dueMs = nextDueMs(next);
    if (dueMs === undefined) return;
    timer = setTimeout(
      () => {
        moveTo(timePassed(drill.value, nowMs()));
        happenings.value += 1;
      },
      Math.max(0, dueMs - nowMs()) + 1,
    );
  };
  const context = () => job.snapshot.value.context;
  return {
    ...job,
    drill,
    happenings,
    seen: () => {
      if (drill.value.over) return undefined;
      const finding = shownNow(drill.value, job.prompt(), context());
      return setup.level === 2 && finding && hasPicture(finding) ? finding : undefined;
    },
    prompt: () => narrated(drill.value, job.prompt(), context(), hasPicture),
    takes: (event) => drill.value.over === undefined && job.takes(event),
    async send(event, trace) {
      const asked = { prompt: job.prompt(), context: context() };
      const sent = job.send(event, trace);
      moveTo(judge(drill.value, event, asked, job.prompt(), nowMs()));
      return sent;
    },
    async voidLockout(reason) {
      const sent = job.voidLockout(reason);
      moveTo(arrive(drill.value, job.prompt(), nowMs()));
      return sent;
    },
    dispose() {
      clearTimeout(timer);
      job.dispose();
    },
  };
}

/** In memory alone: nothing of a drill may ever be taken for a real job. */
function drillLog(): JobLog {
  const jobId = crypto.randomUUID();
  return new JobLog(
    { jobId, originId: jobId, tabletId: jobId },
    [],
    replay([]).snapshot,
    async () => ({ ok: true, value: undefined }),
    Date.now,
  );
}
