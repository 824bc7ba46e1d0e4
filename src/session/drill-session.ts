import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type Debrief, debriefOf } from '../../flows/drill/debrief.ts';
import { debriefPoints, debriefPrompt } from '../../flows/drill/debrief-said.ts';
import {
  answerPressure,
  arrive,
  beginDrill,
  type DrillState,
  isPressedAnswer,
  judge,
  nextDueMs,
  shownNow,
  timePassed,
} from '../../flows/drill/drill.ts';
import type { Finding } from '../../flows/drill/finding.ts';
import { type DrillSetup, LARGEST_SEED } from '../../flows/drill/hidden-fault.ts';
import { isToBeJudged, narrated } from '../../flows/drill/narrate.ts';
import { NEW_SET_UP, type SetUp, setUpAfter, setUpPrompt } from '../../flows/drill/set-up.ts';
import type { HeardEvent } from '../../flows/heard.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { riskOf } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import { JobLog } from '../records/job-log.ts';
import { replay } from '../records/replay.ts';
import { type JobSession, runJob } from './job-session.ts';

/** A drill is a job like any other, whose machine is played and whose log is kept nowhere. */
export interface DrillSession extends JobSession {
  readonly stage: ReadonlySignal<DrillStage>;
  /** What the machine shows now, where that is judged by eye. */
  readonly seen: () => Finding | undefined;
  /** What there is to learn of a drill that is over. */
  readonly debrief: () => Debrief | undefined;
}

/** From the set-up to the end of the spoken debrief. */
export type DrillStage =
  | { readonly at: 'setUp'; readonly setUp: SetUp }
  | { readonly at: 'drill'; readonly drill: DrillState }
  | {
      readonly at: 'debrief';
      readonly debrief: Debrief;
      readonly points: readonly Say[];
      /** The point that is said now, from 0. */
      readonly point: number;
    }
  /** Every point was heard: the written debrief is wanted. */
  | { readonly at: 'heard'; readonly debrief: Debrief };

export interface DrillOptions {
  /** Missing where the drill is set up aloud. */
  readonly setup?: DrillSetup | undefined;
  /** Initials of the trainee. */
  readonly trainee?: string;
  /** A clock that never goes back. */
  readonly nowMs?: () => number;
  /** A number from 0 to {@link LARGEST_SEED} for whoever wants any. */
  readonly anyNumber?: () => number;
}

/** Whatever is asked for beside the job is taken, and nothing of it is put down. */
const NOT_FOR_THE_LOG = { kept: true, seq: 0 } as const;

export function runDrill({
  setup,
  trainee = '',
  nowMs = () => performance.now(),
  anyNumber = () => Math.floor(Math.random() * (LARGEST_SEED + 1)),
}: DrillOptions): DrillSession {
  const job = runJob(drillLog());
  const begun = (chosen: DrillSetup): DrillStage => ({
    at: 'drill',
    drill: arrive(beginDrill(chosen), job.prompt(), nowMs()),
  });
  const stage = signal<DrillStage>(setup ? begun(setup) : { at: 'setUp', setUp: NEW_SET_UP });
  const happenings = signal(0);
  let timer: ReturnType<typeof setTimeout> | undefined;

  const context = () => job.snapshot.value.context;
  const moveTo = (drill: DrillState) => {
    stage.value = { at: 'drill', drill };
    clearTimeout(timer);
    const dueMs = nextDueMs(drill);
    if (dueMs === undefined) return;
    timer = setTimeout(
      () => {
        moveTo(timePassed(drill, nowMs()));
        happenings.value += 1;
      },
      Math.max(0, dueMs - nowMs()) + 1,
    );
  };
  const debriefOn = (drill: DrillState) => debriefOf(drill, context(), { trainee, comment: '' });
  const debriefed = (drill: DrillState): DrillStage => {
    const debrief = debriefOn(drill);
    return { at: 'debrief', debrief, points: debriefPoints(debrief), point: 0 };
  };

  /** The stage after something the job does not hear; undefined for what is for the job, or for nobody. */
  const besideTheJob = (event: HeardEvent): DrillStage | undefined => {
    const now = stage.value;
    switch (now.at) {
      case 'setUp': {
        const setUp = setUpAfter(now.setUp, event, anyNumber);
        if (!setUp) return undefined;
        return setUp.at === 'ready' ? begun(setUp.setup) : { at: 'setUp', setUp };
      }
      case 'drill': {
        const { drill } = now;
        if (drill.over) return event.type === 'carryOn' ? debriefed(drill) : undefined;
        if (!drill.pressed || !isPressedAnswer(event.type)) return undefined;
        const answered = answerPressure(drill, event.type, job.prompt(), nowMs());
        return { at: 'drill', drill: arrive(answered, job.prompt(), nowMs()) };
      }
      case 'debrief': {
        const { debrief, points, point } = now;
        if (event.type === 'goBack' && point > 0) return { ...now, point: point - 1 };
        if (event.type !== 'carryOn') return undefined;
        return point + 1 < points.length ? { ...now, point: point + 1 } : { at: 'heard', debrief };
      }
      case 'heard':
        return undefined;
    }
  };
  const running = () =>
    stage.value.at === 'drill' && !stage.value.drill.over ? stage.value.drill : undefined;
  const isForTheJob = ({ type }: HeardEvent) => {
    const drill = running();
    return drill !== undefined && (!drill.pressed || riskOf(type) === 'void');
  };

  return {
    ...job,
    stage: computed(() => stage.value),
    happenings,
    seen: () => {
      const drill = running();
      if (!drill || drill.pressed || !isToBeJudged(drill)) return undefined;
      const finding = shownNow(drill, job.prompt(), context());
      return finding && hasPicture(finding) ? finding : undefined;
    },
    debrief() {
      const now = stage.value;
      if (now.at === 'drill') return now.drill.over ? debriefOn(now.drill) : undefined;
      return now.at === 'setUp' ? undefined : now.debrief;
    },
    prompt: () => promptOf(stage.value, job.prompt()),
    takes: (event) =>
      'channel' in event
        ? besideTheJob(event) !== undefined || (isForTheJob(event) && job.takes(event))
        : running() !== undefined && job.takes(event),
    preview(event) {
      const beside = besideTheJob(event);
      return beside ? promptOf(beside, job.prompt()) : job.preview(event);
    },
    async send(event, trace) {
      const beside = besideTheJob(event);
      if (beside) {
        if (beside.at === 'drill') moveTo(beside.drill);
        else stage.value = beside;
        return NOT_FOR_THE_LOG;
      }
      const drill = running();
      if (!drill) return NOT_FOR_THE_LOG;
      const asked = { prompt: job.prompt(), context: context() };
      const sent = job.send(event, trace);
      moveTo(judge(drill, event, asked, job.prompt(), nowMs()));
      return sent;
    },
    async voidLockout(reason) {
      const sent = job.voidLockout(reason);
      const drill = running();
      if (drill) moveTo(arrive(drill, job.prompt(), nowMs()));
      return sent;
    },
    dispose() {
      clearTimeout(timer);
      job.dispose();
    },
  };

  function promptOf(now: DrillStage, asked: Prompt): Prompt {
    switch (now.at) {
      case 'setUp':
        return setUpPrompt(now.setUp, asked);
      case 'drill':
        return narrated(now.drill, asked, context(), hasPicture);
      case 'debrief':
        return debriefPrompt(now.points, now.point, asked);
      case 'heard':
        return debriefPrompt([], 0, asked);
    }
  }
}

/** Whether what is seen can be drawn. */
function hasPicture(finding: Finding): boolean {
  return finding.kind === 'seen' && answerPicture(finding.meaning) !== undefined;
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
