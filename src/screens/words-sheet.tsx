import type { JSX } from 'preact';
import {
  FIGURE_MEANINGS,
  HEARING_MEANINGS,
  type MeaningId,
  SETTING_MEANINGS,
  taughtForm,
  VOID_MEANINGS,
} from '../../grammar/lexicon.ts';
import { NAMED_PART_IDS, NAMED_PARTS } from '../../grammar/named-parts.ts';
import type { Side } from '../../grammar/sides.ts';
import type { Slots } from '../../grammar/understand.ts';
import { type KeepPhoto, PhotoTaker } from './photo-taker.tsx';
import { asSentence } from './sentence.ts';
import { Sheet } from './sheet.tsx';
import { MORE_WORDS } from './universal-words.ts';

interface WordsSheetProps {
  onPress(meaning: MeaningId, slots?: Slots): void;
  /** Missing where nothing can be kept. */
  readonly keepPhoto: KeepPhoto | undefined;
  /** The side the job is about, where it is known. */
  readonly side: Side | undefined;
  onLeave(): void;
  onClose(): void;
}

/** Every word that always works, everything that takes the lockout away, and the figures, as buttons. */
export function WordsSheet({ onPress, keepPhoto, side, onLeave, onClose }: WordsSheetProps): JSX.Element {
  return (
    <Sheet title="Other words" closeLabel="Back to the question" onClose={onClose}>
      <div class="word-grid">
        {MORE_WORDS.map(({ meaning, label }) => (
          <button type="button" key={meaning} onClick={() => onPress(meaning)}>
            {label}
          </button>
        ))}
        <button type="button" onClick={onLeave}>
          Leave it for now
        </button>
      </div>
      <h2>Something changed at the machine</h2>
      <p>Any of these takes the lockout away at once.</p>
      <div class="word-grid" data-kind="void">
        {VOID_MEANINGS.map((meaning) => (
          <button type="button" key={meaning} onClick={() => onPress(meaning)}>
            {asSentence(taughtForm(meaning))}
          </button>
        ))}
      </div>
      <div class="word-grid">
        <button type="button" onClick={() => onPress('count.open')}>
          Count bales
        </button>
      </div>
      <h2>See and hear it better</h2>
      <div class="word-grid">
        {(['tying.open', ...SETTING_MEANINGS, ...HEARING_MEANINGS] as const).map((meaning) => (
          <button type="button" key={meaning} onClick={() => onPress(meaning)}>
            {asSentence(taughtForm(meaning))}
          </button>
        ))}
      </div>
      {keepPhoto ? (
        <>
          <h2>Take a photo</h2>
          <p>
            While the camera is open nobody watches the machine here, so it takes the lockout away. Photos can
            also be taken on the job card.
          </p>
          <PhotoTaker keep={keepPhoto} side={side} />
        </>
      ) : null}
      <h2>Ask the record</h2>
      <div class="word-grid">
        <button type="button" onClick={() => onPress('recall.record')}>
          Read me the record
        </button>
        {NAMED_PART_IDS.map((part) => (
          <button type="button" key={part} onClick={() => onPress('recall.part', { part })}>
            What I said about {NAMED_PARTS[part]}
          </button>
        ))}
      </div>
      <h2>Work something out</h2>
      <div class="word-grid">
        {FIGURE_MEANINGS.map((meaning) => (
          <button type="button" key={meaning} onClick={() => onPress(meaning)}>
            {asSentence(taughtForm(meaning))}
          </button>
        ))}
      </div>
    </Sheet>
  );
}
