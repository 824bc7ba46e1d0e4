import { FIGURE_MEANINGS, type FigureMeaning, type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { ImpossibleFigure } from '../figures/quantity.ts';
import type { Prompt } from '../prompt.ts';
import { Given } from './figure-question.ts';
import { type InputId, inputOf } from './inputs.ts';
import { FIGURE_LINES as LINES } from './lines.ts';
import { FIGURES } from './questions.ts';
import type { UnitSystem } from './unit-system.ts';
import {
  type FigureAnswer,
  type FigureValue,
  type FigureValues,
  isPossible,
  sayBack,
  sayNamed,
  saySpan,
  valueSaid,
} from './values.ts';

/**
 * A figure being worked out beside the job: one question at a time, each value read back and accepted. It knows
 * nothing of the job and changes nothing of it. Whatever takes a lockout away is not for it; the job gets that.
 */
export interface FigureDialogue {
  readonly figure: FigureMeaning;
  /** Accepted, or known before. */
  readonly values: FigureValues;
  /** Those of them that were known before, in the order they are needed. */
  readonly known: readonly InputId[];
  /** The input that is asked for. */
  readonly asking: InputId;
  /** Read back, waiting for a yes. */
  readonly pending?: { readonly value: FigureValue; readonly readBack: Say };
  readonly notices: Say;
  /** What the answer and the spans are given in; a value is read back as it was said. */
  readonly system: UnitSystem;
}

/** What came of something said while a figure has the floor. */
export type FigureTurn =
  | { readonly kind: 'asks'; readonly dialogue: FigureDialogue }
  | { readonly kind: 'answers'; readonly worked: WorkedFigure }
  | { readonly kind: 'leaves'; readonly say: Say }
  | { readonly kind: 'notTaken' };

/** A figure with its answer: what goes into the record. */
export interface WorkedFigure extends FigureAnswer {
  readonly figure: FigureMeaning;
  readonly values: FigureValues;
}

export function isFigureMeaning(meaning: string): meaning is FigureMeaning {
  return (FIGURE_MEANINGS as readonly string[]).includes(meaning);
}

/**
 * Begins a figure, or works it out at once where everything it needs is known.
 * @param known possible values only
 * @param system the units it is answered in
 */
export function beginFigure(figure: FigureMeaning, known: FigureValues, system: UnitSystem): FigureTurn {
  const { inputs } = FIGURES[figure];
  const there = inputs.filter((id) => known[id] !== undefined);
  const values = Object.fromEntries(there.map((id) => [id, known[id]]));
  return goOn({
    figure,
    values,
    known: there,
    asking: inputs[0] ?? 'baleLength',
    notices: [ruleOf(figure).readBack],
    system,
  });
}

/** Takes what was said, as far as the figure asks for it. */
export function hearFigure(dialogue: FigureDialogue, meaning: MeaningId, slots: Slots): FigureTurn {
  if (meaning === 'goBack') return { kind: 'leaves', say: [LINES.left] };
  const { takes } = inputOf(dialogue.asking);
  if (dialogue.pending !== undefined) return hearAcceptance(dialogue, dialogue.pending.value, meaning);
  if (meaning === 'notSure' || meaning === 'cannotSee' || meaning === 'skip') {
    return { kind: 'leaves', say: [LINES.withoutIt] };
  }
  const value = valueSaid(takes, meaning, slots);
  if (value === undefined) return { kind: 'notTaken' };
  if (!isPossible(takes, value)) {
    return asks({ ...dialogue, notices: [LINES.impossible] });
  }
  return takes.kind === 'choice'
    ? accepted({ ...dialogue, notices: [ruleOf(meaning).readBack] }, value)
    : asks({
        ...dialogue,
        pending: { value, readBack: sayBack(takes, value, slots, dialogue.system) },
        notices: [],
      });
}

/** What is asked while a figure has the floor. The job's own prompt stands behind it, with its safety and its picture. */
export function figurePrompt({ asking, pending, notices, system }: FigureDialogue, job: Prompt): Prompt {
  const { ask, takes } = inputOf(asking);
  const behind = { why: [LINES.why], look: job.look, safety: job.safety, notices };
  if (pending !== undefined) {
    const question = [...pending.readBack, LINES.accept];
    return {
      ...behind,
      state: `figure.accept.${asking}`,
      question,
      brief: question,
      expecting: { meanings: ['yes', 'no'] },
    };
  }
  const span = saySpan(takes, system);
  const isQuestioned = notices.includes(LINES.impossible);
  const withSpan = span.length > 0 ? [ask, LINES.span, ...span] : [ask];
  return {
    ...behind,
    state: `figure.ask.${asking}`,
    question: isQuestioned ? withSpan : [ask],
    brief: withSpan,
    expecting: expectingFor(takes),
  };
}

function hearAcceptance(dialogue: FigureDialogue, pending: FigureValue, meaning: MeaningId): FigureTurn {
  const { pending: _, ...rest } = dialogue;
  switch (meaning) {
    case 'yes':
      return accepted({ ...rest, notices: [] }, pending);
    case 'no':
      return asks({ ...rest, notices: [ruleOf('no').readBack] });
    default:
      return { kind: 'notTaken' };
  }
}

function accepted(dialogue: FigureDialogue, value: FigureValue): FigureTurn {
  return goOn({ ...dialogue, values: { ...dialogue.values, [dialogue.asking]: value } });
}

/** Asks for what is still missing, else works it out. */
function goOn(dialogue: FigureDialogue): FigureTurn {
  const { figure, values } = dialogue;
  const missing = FIGURES[figure].inputs.find((id) => values[id] === undefined);
  if (missing) return asks({ ...dialogue, asking: missing });
  try {
    return { kind: 'answers', worked: workOut(dialogue) };
  } catch (error) {
    if (!(error instanceof ImpossibleFigure)) throw error;
    return doNotFit(dialogue);
  }
}

/** Each value is possible and yet not with the others: what was given last is taken again, known or not. */
function doNotFit(dialogue: FigureDialogue): FigureTurn {
  const asking = FIGURES[dialogue.figure].inputs.at(-1) ?? dialogue.asking;
  const { [asking]: _, ...values } = dialogue.values;
  const known = dialogue.known.filter((id) => id !== asking);
  return asks({ ...dialogue, values, known, asking, notices: [LINES.doNotFit] });
}

function workOut({ figure, values, known, notices, system }: FigureDialogue): WorkedFigure {
  const { say, assumptions } = FIGURES[figure].answer(new Given(values, system));
  const recap = known.flatMap((id) => {
    const value = values[id];
    return value === undefined ? [] : sayNamed(id, value, system);
  });
  return {
    figure,
    values,
    assumptions,
    say: [...notices, ...(recap.length > 0 ? [LINES.usedBefore, ...recap] : []), LINES.workedOut, ...say],
  };
}

function asks(dialogue: FigureDialogue): FigureTurn {
  return { kind: 'asks', dialogue };
}

function expectingFor(takes: ReturnType<typeof inputOf>['takes']): Prompt['expecting'] {
  switch (takes.kind) {
    case 'measurement':
      return { meanings: ['notSure'], value: { kind: 'measurement', dimension: takes.dimension } };
    case 'count':
      return { meanings: ['notSure'], value: { kind: 'count' } };
    case 'missCount':
      return { meanings: ['notSure'], value: { kind: 'missCount' } };
    case 'day':
      return { meanings: ['notSure'], value: { kind: 'day' } };
    case 'choice':
      return { meanings: takes.meanings };
  }
}
