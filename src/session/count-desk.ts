import { type ReadonlySignal, signal } from '@preact/signals';
import type { HeardEvent } from '../../flows/heard.ts';
import type { JobContext } from '../../flows/job-context.ts';
import { type CountEntry, type DatedEntry, entryFor } from '../../flows/miss-log/entry.ts';
import { type CountOffer, countOffer, withOffer } from '../../flows/miss-log/offer.ts';
import {
  COUNT_OPENING,
  countPrompt,
  sayLeaving,
  sayNoNumber,
  sayPatterns,
} from '../../flows/miss-log/saying.ts';
import { type Tally, tallyOf } from '../../flows/miss-log/tally.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { riskOf, ruleOf } from '../../grammar/lexicon.ts';
import { type Say, sayWhole } from '../../grammar/say.ts';

/** What came of an event while bales are counted. */
export type CountTurn =
  | { readonly kind: 'counts'; readonly entry: CountEntry }
  | { readonly kind: 'asks' }
  | { readonly kind: 'tells'; readonly say: Say }
  | { readonly kind: 'leaves'; readonly say: Say }
  | { readonly kind: 'notTaken' }
  /** Not of the counting, or what the count gives as an answer to the job. */
  | { readonly kind: 'forTheJob'; readonly event: HeardEvent };

/** Counts bales beside a job, which stands still meanwhile. Whatever takes a lockout away ends the counting. */
export interface CountDesk {
  /** The bales of this job so far, while they are counted. */
  readonly tally: ReadonlySignal<Tally | undefined>;
  /** What is asked now: the next bale while they are counted, else the job's question with what the count can answer. */
  promptOver(job: Prompt, context: JobContext): Prompt;
  /** @param job what the job asks behind the count */
  take(event: HeardEvent, job: Prompt, context: JobContext): CountTurn;
  /** Reckons anew after an entry went into the log. */
  counted(): void;
  end(): void;
}

/** @param counted what was counted in this job so far */
export function openCountDesk(counted: () => readonly DatedEntry[]): CountDesk {
  const tally = signal<Tally | undefined>(undefined);
  const notices = signal<Say>([]);
  const tallied = () => tallyOf(counted().map(({ entry }) => entry));
  const end = () => {
    tally.value = undefined;
    notices.value = [];
  };
  return {
    tally,
    promptOver(job, context) {
      if (tally.value) return countPrompt(tally.value, notices.value, job);
      const offer = countOffer(job, context, counted());
      return offer ? withOffer(job, offer) : job;
    },
    take(event, job, context) {
      const { type: meaning, slots } = event;
      if (riskOf(meaning) === 'void') {
        end();
        return { kind: 'forTheJob', event };
      }
      if (meaning === COUNT_OPENING) {
        notices.value = [ruleOf(meaning).readBack];
        tally.value = tallied();
        return { kind: 'asks' };
      }
      if (!tally.value)
        return { kind: 'forTheJob', event: asAnswer(event, countOffer(job, context, counted())) };
      if (meaning === 'count.pattern') return { kind: 'tells', say: sayPatterns(tally.value) };
      if (meaning === 'count.enough') {
        const say = [ruleOf(meaning).readBack, ...sayLeaving(tally.value)];
        end();
        return { kind: 'leaves', say };
      }
      // "Go back" means the last bale here, as it means the last answer elsewhere.
      const entry: CountEntry | undefined =
        meaning === 'goBack' ? { kind: 'takeBack' } : entryFor(meaning, slots);
      if (!entry) {
        if (meaning !== 'value.count') return { kind: 'notTaken' };
        notices.value = sayNoNumber();
        return { kind: 'asks' };
      }
      notices.value =
        meaning === 'value.count' && slots.count !== undefined
          ? sayWhole(slots.count)
          : [ruleOf(meaning).readBack];
      return { kind: 'counts', entry };
    },
    counted() {
      tally.value = tallied();
    },
    end,
  };
}

/** An offered count is given to the job as the answer it is; everything else as it came. */
function asAnswer(event: HeardEvent, offer: CountOffer | undefined): HeardEvent {
  if (event.type !== offer?.meaning) return event;
  const { missCount } = offer;
  switch (offer.meaning) {
    case 'count.asBefore':
      return { ...event, type: 'value.missRate', slots: { missCount } };
    case 'count.asTies':
      return { ...event, slots: { missCount } };
  }
}
