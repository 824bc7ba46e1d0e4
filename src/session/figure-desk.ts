import { type ReadonlySignal, signal } from '@preact/signals';
import {
  beginFigure,
  type FigureDialogue,
  type FigureTurn,
  figurePrompt,
  hearFigure,
  isFigureMeaning,
  type WorkedFigure,
} from '../../flows/figures-asked/dialogue.ts';
import { knownValues } from '../../flows/figures-asked/known.ts';
import type { UnitSystem } from '../../flows/figures-asked/unit-system.ts';
import type { FigureValues } from '../../flows/figures-asked/values.ts';
import type { HeardEvent } from '../../flows/heard.ts';
import type { JobContext } from '../../flows/job-context.ts';
import type { Tally } from '../../flows/miss-log/tally.ts';
import type { Prompt } from '../../flows/prompt.ts';
import { riskOf } from '../../grammar/lexicon.ts';

/** A turn of the figure that has the floor, or that the event is the job's. */
export type DeskTurn = FigureTurn | { readonly kind: 'forTheJob' };

/**
 * Works figures out beside a job. While one has the floor the job stands still; whatever takes a lockout away goes
 * to the job at once and ends the figure.
 */
export interface FigureDesk {
  readonly dialogue: ReadonlySignal<FigureDialogue | undefined>;
  /** What is asked now: the figure's question where one has the floor, else the job's. */
  promptOver(job: Prompt): Prompt;
  take(event: HeardEvent, context: JobContext): DeskTurn;
  /** What would come of an event, without taking it. */
  preview(event: HeardEvent, job: Prompt): Prompt | undefined;
  /** Ends the figure without a word, because something happened at the machine. */
  end(): void;
}

/**
 * @param tally bales counted of the machine as it was before the repairs that wait for their proof
 * @param worked figures of this job, latest last
 * @param ofMachine what is kept of the machine
 * @param system the units somebody thinks in now
 */
export function openFigureDesk(
  tally: () => Tally,
  worked: () => readonly Pick<WorkedFigure, 'figure' | 'values'>[],
  ofMachine: FigureValues,
  system: () => UnitSystem,
): FigureDesk {
  const dialogue = signal<FigureDialogue | undefined>(undefined);
  return {
    dialogue,
    promptOver: (job) => (dialogue.value ? figurePrompt(dialogue.value, job) : job),
    take(event, context) {
      if (riskOf(event.type) === 'void') {
        dialogue.value = undefined;
        return { kind: 'forTheJob' };
      }
      const turn = isFigureMeaning(event.type)
        ? beginFigure(event.type, knownValues(event.type, context, worked(), ofMachine, tally()), system())
        : dialogue.value && hearFigure(dialogue.value, event.type, event.slots);
      if (!turn) return { kind: 'forTheJob' };
      if (turn.kind !== 'notTaken') dialogue.value = turn.kind === 'asks' ? turn.dialogue : undefined;
      return turn;
    },
    preview(event, job) {
      if (!dialogue.value) return undefined;
      const turn = hearFigure(dialogue.value, event.type, event.slots);
      return turn.kind === 'asks' ? figurePrompt(turn.dialogue, job) : undefined;
    },
    end() {
      dialogue.value = undefined;
    },
  };
}
