import type { Say } from '../../grammar/say.ts';

/** Something that speaks: the recorded clips, or a voice of the tablet's own. It says one thing at a time. */
export interface Voice {
  /** Begins to speak, cutting short whatever it was saying. Never throws: trouble comes through the utterance. */
  speak(say: Say): Utterance;
  /** Gets ready for what may be said next, so that it starts at once. */
  prepare(says: readonly Say[]): void;
}

/** One thing being said. */
export interface Utterance {
  /** When the first sound leaves the loudspeaker, on the clock of performance.now(), or 'never' if none does. */
  readonly started: Promise<number | 'never'>;
  /** How it ended: said to the end, cut short, or failed, in which case the trouble has been reported. */
  readonly finished: Promise<UtteranceEnd>;
  /** Falls silent within some milliseconds. Does nothing once it has ended. */
  cut(): void;
}

export type UtteranceEnd = 'done' | 'cut' | 'failed';

/**
 * Why something was not said. Nothing of it is spoken then, not even the part that could be: a value without its
 * number is worse than silence. The screen shows the sentence all the same.
 */
export interface SpeechTrouble {
  readonly kind: TroubleKind;
  /** What was to be said. */
  readonly say: Say;
  /** What is wrong and what still works, in a sentence for the screen. */
  readonly message: string;
}

export type TroubleKind =
  /** A fragment has no clip: a fault of the build. */
  | 'noClip'
  /** A clip or its pack cannot be read or decoded. */
  | 'badClip'
  /** The browser gives no sound: before the first touch, or another app has taken it. */
  | 'soundBlocked'
  /** The tablet's own voice failed. */
  | 'systemVoiceFailed'
  /** An empty Say. */
  | 'nothingToSay';

/** Thrown inside the mouth; what leaves it is a {@link SpeechTrouble}. */
export class SpeechFault extends Error {
  override readonly name = 'SpeechFault';
  readonly kind: TroubleKind;

  constructor(kind: TroubleKind, message: string) {
    super(message);
    this.kind = kind;
  }
}
