import type { JSX } from 'preact';
import type { SafetyState } from '../../flows/prompt.ts';

/**
 * One outline a safety state, told apart by shape alone in a black-and-white print: a barred gate, a wheel running
 * down, an eye, a stair with one step pointed at, a hand-turned wheel, a padlock with its key out, a seat.
 */
export function SafetyShape({ state }: { readonly state: SafetyState }): JSX.Element {
  return (
    <svg class="safety-shape" viewBox="0 0 100 100" aria-hidden="true" focusable="false">
      {OUTLINES[state]}
    </svg>
  );
}

const OUTLINES: Readonly<Record<SafetyState, JSX.Element>> = {
  keepOut: (
    <g fill="none" stroke="currentColor" stroke-width="8" stroke-linecap="square">
      <path d="M12 14V90M88 14V90" stroke-width="12" />
      <path d="M12 28H88M12 48H88M12 68H88M12 86H88" stroke-width="7" />
      <path d="M14 84 86 30" stroke-width="7" />
    </g>
  ),
  stopping: (
    <g fill="none" stroke="currentColor" stroke-width="8" stroke-linecap="round">
      <circle cx="50" cy="50" r="34" stroke-width="11" stroke-dasharray="62 9 40 11 24 13 14 16 9 16" />
      <path d="M50 36V64M36 50H64" stroke-width="7" />
      <path d="M92 34 86 18 70 22" />
    </g>
  ),
  eyesOnly: (
    <g fill="none" stroke="currentColor" stroke-width="8" stroke-linejoin="round">
      <path d="M4 50Q50 2 96 50 50 98 4 50Z" />
      <circle cx="50" cy="50" r="16" fill="currentColor" stroke="none" />
      <path d="M28 12 24 2M50 6V-4M72 12 76 2" stroke-linecap="round" stroke-width="6" />
    </g>
  ),
  thisStepOnly: (
    <g fill="none" stroke="currentColor" stroke-width="9" stroke-linejoin="miter">
      <path d="M6 92H34V66H62V40H90V14" stroke-width="12" />
      <path d="M34 40V14M20 28 34 42 48 28" stroke-linecap="round" />
    </g>
  ),
  handTurn: (
    <g fill="none" stroke="currentColor" stroke-width="8" stroke-linecap="round">
      <circle cx="50" cy="54" r="38" stroke-width="12" />
      <circle cx="50" cy="54" r="8" fill="currentColor" />
      <path d="M50 46V18M43 60 20 76M57 60 80 76" stroke-width="6" />
      <path d="M62 4Q86 8 95 32M95 32 82 28M95 32 99 19" stroke-width="6" />
    </g>
  ),
  lockedOut: (
    <g fill="none" stroke="currentColor" stroke-width="10">
      <path d="M28 46V30a22 22 0 0 1 44 0V46" />
      <rect x="14" y="46" width="72" height="50" rx="4" fill="currentColor" stroke="none" />
      <circle cx="50" cy="66" r="8" fill="var(--plate)" stroke="none" />
      <path d="M50 68V84" stroke="var(--plate)" stroke-width="7" />
    </g>
  ),
  poweredTest: (
    <g fill="none" stroke="currentColor" stroke-width="9" stroke-linecap="round" stroke-linejoin="round">
      <path d="M22 8Q30 46 34 60H78" stroke-width="13" />
      <path d="M56 62V88M34 92H80" />
      <path d="M84 22 60 46" stroke-width="6" />
      <circle cx="76" cy="30" r="16" stroke-width="6" />
    </g>
  ),
};
