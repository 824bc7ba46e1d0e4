import type { ReadonlySignal } from '@preact/signals';
import type { LevelReading } from '../../audio/ears/level.ts';
import type { Aside } from '../../flows/asides.ts';
import type { JobContext } from '../../flows/job-context.ts';
import type { Tally } from '../../flows/miss-log/tally.ts';
import type { Prompt } from '../../flows/prompt.ts';
import type { Wording } from '../../flows/wording.ts';
import type { HearingGrade } from '../../grammar/hearing-grade.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Slots } from '../../grammar/understand.ts';

/** What the screens show of a running job, and the few things they can do to it. Voice and touch meet here. */
export interface Conversation {
  readonly view: ReadonlySignal<ConversationView>;
  /** A button: the same event as the phrase it stands for. */
  press(meaning: MeaningId, slots?: Slots): void;
  /** Back from an aside to the question, which is asked once more in short. */
  closeAside(): void;
  /** Opens the microphone; must be called from a tap. */
  startVoice(): Promise<void>;
  /** Closes the microphone and silences the mouth; the buttons go on. */
  stopVoice(): void;
  /** Ends the session and releases microphone, recogniser and lock. */
  dispose(): void;
}

export interface ConversationView {
  readonly prompt: Prompt;
  readonly context: JobContext;
  /** How units and sides are called. */
  readonly wording: Wording;
  readonly turn: Turn;
  readonly voice: VoiceState;
  readonly level?: LevelReading;
  /** How well the ears hear, as it was said. */
  readonly hearing: HearingGrade;
  /** One sentence for what keeps the app from speaking; what it would have said is on the screen. */
  readonly speechTrouble?: string;
  readonly lastHeard?: LastHeard;
  /** Shown over the question until the next event: an answer to "why", "show me", "how far" or "what can I say". */
  readonly aside?: Aside;
  /** The answers asked for here, likeliest first, as buttons: the few that are shown, and how many more there are. */
  readonly answers: AnswersShown;
  readonly record: RecordState;
  /** The bales counted so far, while they are counted. */
  readonly tally?: Tally;
}

/** Whose turn it is. */
export type Turn = 'speaking' | 'listening' | 'hearing' | 'thinking' | 'resting' | 'quiet';

export type VoiceState =
  | { readonly kind: 'off' }
  | { readonly kind: 'starting'; readonly share: number }
  /** The note says, until somebody was heard, why another speech model listens than the one that was chosen. */
  | { readonly kind: 'on'; readonly isWarm: boolean; readonly note?: string }
  /** One sentence that says what is wrong and what still works. */
  | { readonly kind: 'failed'; readonly sentence: string };

export interface LastHeard {
  /** The words as the recogniser gave them; empty for a button. */
  readonly words: string;
  readonly outcome: 'taken' | 'notForNow' | 'unclear' | 'ambiguous';
  /** What it was taken for, in the words prompts teach. */
  readonly takenFor?: string;
}

export interface Choice {
  readonly meaning: MeaningId;
  readonly label: string;
  /** Its number on the screen, by which it can be pointed at; none for what only its own words may confirm. */
  readonly number?: number;
}

/** One page of the answers, in the order of the screen. */
export interface AnswersShown {
  /** An answer, or the place where a number is tapped in. */
  readonly shown: readonly (Choice | 'number')[];
  /** From 0. */
  readonly page: number;
  /** One where everything fits. */
  readonly pages: number;
}

export type RecordState =
  | { readonly kind: 'kept' }
  | { readonly kind: 'keeping' }
  /** Something could not be written; the sentence says what is wrong and what still works. */
  | { readonly kind: 'notKept'; readonly sentence: string };
