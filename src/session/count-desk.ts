import { type ReadonlySignal, signal } from '@preact/signals';
import type { HeardEvent } from '../../flows/heard.ts';
import { type CountEntry, entryFor } from '../../flows/miss-log/entry.ts';
import { COUNT_LINES, COUNT_OPENING, countPrompt, sayPatterns } from '../../flows/miss-log/saying.ts';
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
  | { readonly kind: 'forTheJob' };

/** Counts bales beside a job, which stands still meanwhile. Whatever takes a lockout away ends the counting. */
export interface CountDesk {
  /** The bales of this job so far, while they are counted. */
  readonly tally: ReadonlySignal<Tally | undefined>;
  promptOver(job: Prompt): Prompt;
  take(event: HeardEvent): CountTurn;
  /** Reckons anew after an entry went into the log. */
  counted(): void;
  end(): void;
}

/** @param entries what was counted in this job so far */
export function openCountDesk(entries: () => readonly CountEntry[]): CountDesk {
  const tally = signal<Tally | undefined>(undefined);
  let notices: Say = [];
  const end = () => {
    tally.value = undefined;
    notices = [];
  };
  return {
    tally,
    promptOver: (job) => (tally.value ? countPrompt(tally.value, notices, job) : job),
    take(event) {
      const { type: meaning, slots } = event;
      if (riskOf(meaning) === 'void') {
        end();
        return { kind: 'forTheJob' };
      }
      if (meaning === COUNT_OPENING) {
        notices = [ruleOf(meaning).readBack];
        tally.value = tallyOf(entries());
        return { kind: 'asks' };
      }
      if (!tally.value) return { kind: 'forTheJob' };
      if (meaning === 'count.pattern') return { kind: 'tells', say: sayPatterns(tally.value) };
      if (meaning === 'count.enough') {
        end();
        return { kind: 'leaves', say: [ruleOf(meaning).readBack, COUNT_LINES.back] };
      }
      // "Go back" means the last bale here, as it means the last answer elsewhere.
      const entry: CountEntry | undefined =
        meaning === 'goBack' ? { kind: 'takeBack' } : entryFor(meaning, slots);
      if (!entry) {
        if (meaning !== 'value.count') return { kind: 'notTaken' };
        notices = [COUNT_LINES.noNumber];
        return { kind: 'asks' };
      }
      notices =
        meaning === 'value.count' && slots.count !== undefined
          ? sayWhole(slots.count)
          : [ruleOf(meaning).readBack];
      return { kind: 'counts', entry };
    },
    counted() {
      tally.value = tallyOf(entries());
    },
    end,
  };
}
