import type { MeaningId } from '../../grammar/lexicon.ts';

/** A button for a word that always works, shorter than the phrase it stands for. */
export interface WordButton {
  readonly meaning: MeaningId;
  readonly label: string;
}

/** Always on the screen, always in these places, beside "stop". */
export const FIXED_WORDS: readonly WordButton[] = [
  { meaning: 'sayAgain', label: 'Say again' },
  { meaning: 'goBack', label: 'Go back' },
];

/** One tap further away. */
export const MORE_WORDS: readonly WordButton[] = [
  { meaning: 'notSure', label: 'Not sure' },
  { meaning: 'cannotSee', label: 'Can’t see it' },
  { meaning: 'skip', label: 'Skip this' },
  { meaning: 'why', label: 'Why?' },
  { meaning: 'showMe', label: 'Show me where' },
  { meaning: 'howFar', label: 'How far are we?' },
  { meaning: 'help', label: 'What can I say?' },
  { meaning: 'handOver', label: 'Hand it over' },
];
