import type { JSX } from 'preact';
import type { Aside } from '../../flows/asides.ts';
import type { PartId } from '../../flows/knotter.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import { CycleStation } from '../pictures/cycle-player.tsx';
import { PartPicture } from '../pictures/part-picture.tsx';
import { asRead } from './as-read.ts';
import { LockoutList } from './lockout-list.tsx';
import type { ListedStep } from './lockout-progress.ts';
import { Sheet } from './sheet.tsx';

const ASIDE_TITLES: Readonly<Record<Aside['kind'], string>> = {
  why: 'Why',
  where: 'Where to look',
  howFar: 'How far we are',
  help: 'What can be said now',
  repeat: 'Once more',
  figure: 'Worked out',
  record: 'From the record',
  tying: 'One tie, step by step',
};

interface AsideSheetProps {
  readonly aside: Aside;
  /** The part the question is about. */
  readonly look: PartId;
  /** The lockout while it is built; shown with "how far". */
  readonly steps: readonly ListedStep[] | undefined;
  onPress(meaning: MeaningId): void;
  onClose(): void;
}

/** An answer to "why", "show me", "how far" or "what can I say", over the question. */
export function AsideSheet({ aside, look, steps, onPress, onClose }: AsideSheetProps): JSX.Element {
  return (
    <Sheet title={ASIDE_TITLES[aside.kind]} closeLabel="Back to the question" onClose={onClose}>
      {aside.kind === 'where' ? (
        <PartPicture part={look} />
      ) : aside.station !== undefined ? (
        <CycleStation
          at={aside.station}
          onBack={() => onPress('tying.back')}
          onNext={() => onPress('tying.next')}
        />
      ) : aside.kind === 'help' ? (
        <ul class="sayable">
          {aside.say.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ) : (
        <p class="aside-text" aria-live="polite">
          {asRead(aside.say)}
        </p>
      )}
      {aside.footnotes ? (
        <ul class="aside-footnotes" aria-label="What that takes for granted">
          {aside.footnotes.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ) : null}
      {aside.kind === 'howFar' && steps ? <LockoutList steps={steps} /> : null}
    </Sheet>
  );
}
