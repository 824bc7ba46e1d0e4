import {
  answerPressure,
  arrive,
  beginDrill,
  type DrillState,
  judge,
  nextDueMs,
  shownNow,
  timePassed,
} from '../../../flows/drill/drill.ts';
import { trapById } from '../../../flows/drill/hazards.ts';
import type { DrillSetup } from '../../../flows/drill/hidden-fault.ts';
import type { JobContext } from '../../../flows/job-context.ts';
import type { Prompt } from '../../../flows/prompt.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import type { Slots } from '../../../grammar/understand.ts';
import { said, TestJob } from '../talk.ts';

export type Reply = readonly [meaning: MeaningId, slots?: Slots];

/** What somebody says to a moment of a drill; `wait` lets time pass instead. */
export type Trainee = (drill: DrillState, job: TestJob) => Reply | 'wait';

/** Somebody who reads everything rightly, meets every hazard and declines what rides along. */
export const careful: Trainee = (drill, job) => {
  const { prompt, context } = job;
  if (drill.pressed) return ['pressure.refuse'];
  if (drill.interruption?.sinceMs !== undefined) return ['void.notSure'];
  if (drill.trap) {
    const { passes, answeredBy } = trapById(drill.trap.id);
    return passes ? 'wait' : [answeredBy ?? 'void.movedOnTry'];
  }
  const shown = shownNow(drill, prompt, context);
  if (!shown) return [usual(prompt)];
  switch (shown.kind) {
    case 'measured':
      return ['value.measured', { measurement: shown.measurement }];
    case 'counted':
      return ['value.missRate', { missCount: shown.missCount }];
    default:
      return [shown.meaning];
  }
};

/** What rides along is declined: it would only cost minutes. */
function usual({ state, expecting }: Prompt): MeaningId {
  return state === 'job.inquiry.alongside' ? 'no' : (expecting.meanings[0] ?? 'notSure');
}

const MOST_STEPS = 600;

export interface Played {
  readonly drill: DrillState;
  readonly context: JobContext;
}

/** Plays a drill through. @param paceMs what every saying takes; an interruption waits some seconds for its moment @param onMoment called after everything said */
export function play(
  setup: DrillSetup,
  trainee: Trainee,
  paceMs = 4_000,
  onMoment?: (drill: DrillState, job: TestJob) => void,
): Played {
  const job = new TestJob();
  let atMs = 0;
  let drill = arrive(beginDrill(setup), job.prompt, atMs);
  for (let step = 0; step < MOST_STEPS && !drill.over; step += 1) {
    atMs += paceMs;
    drill = timePassed(drill, atMs);
    const reply = trainee(drill, job);
    if (reply === 'wait') {
      atMs = nextDueMs(drill) ?? atMs;
      drill = timePassed(drill, atMs);
      continue;
    }
    const asked = { prompt: job.prompt, context: job.context };
    const event = said(...reply);
    if (event.type === 'pressure.refuse' || event.type === 'pressure.giveIn') {
      drill = arrive(answerPressure(drill, event.type, asked.prompt, atMs), job.prompt, atMs);
      onMoment?.(drill, job);
      continue;
    }
    if (!job.actor.getSnapshot().can(event))
      throw new Error(`${event.type} is not taken in ${asked.prompt.state}.`);
    job.send(event);
    drill = judge(drill, event, asked, job.prompt, atMs);
    onMoment?.(drill, job);
  }
  if (!drill.over) throw new Error(`The drill goes round at ${job.prompt.state}.`);
  return { drill, context: job.context };
}
