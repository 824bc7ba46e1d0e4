import type { JSX } from 'preact';
import type { MeaningId } from '../../grammar/lexicon.ts';
import './fixed-bar.css';
import { FIXED_WORDS } from './universal-words.ts';

interface FixedBarProps {
  readonly isMoreOpen: boolean;
  onPress(meaning: MeaningId): void;
  onMore(): void;
}

/** Stop, say again, go back and the way to every other word: in the same places on every screen of a job. */
export function FixedBar({ isMoreOpen, onPress, onMore }: FixedBarProps): JSX.Element {
  return (
    <nav class="fixed-bar" aria-label="Always here">
      <button type="button" class="stop" onClick={() => onPress('stop')}>
        <svg viewBox="0 0 40 40" aria-hidden="true" focusable="false">
          <path d="M12 2H28L38 12V28L28 38H12L2 28V12Z" fill="currentColor" />
        </svg>
        Stop
      </button>
      {FIXED_WORDS.map(({ meaning, label }) => (
        <button type="button" key={meaning} onClick={() => onPress(meaning)}>
          {label}
        </button>
      ))}
      <button type="button" aria-expanded={isMoreOpen} onClick={onMore}>
        More
      </button>
    </nav>
  );
}
