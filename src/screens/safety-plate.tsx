import type { JSX } from 'preact';
import type { SafetyState } from '../../flows/prompt.ts';
import type { StepCount } from './lockout-progress.ts';
import './safety-plate.css';
import { SafetyShape } from './safety-shape.tsx';
import { PLACE_WORDS, PLACES, SAFETY_WORDS } from './safety-words.ts';

interface SafetyPlateProps {
  readonly state: SafetyState;
  /** How far the shut-down is, while it is under way. */
  readonly step: StepCount | undefined;
}

/**
 * Whether eyes, hands or nobody may be at the machine, said four ways at once: the word, the shape, the place of
 * the lever along the way in, and the colour of the plate.
 */
export function SafetyPlate({ state, step }: SafetyPlateProps): JSX.Element {
  const { word, meaning, place, onTheWayTo } = SAFETY_WORDS[state];
  return (
    <section class="safety-plate" data-safety={state} aria-label="Safety">
      <SafetyShape state={state} />
      <div class="safety-says" role="alert">
        <p class="safety-word">{word}</p>
        <p class="safety-meaning">{meaning}</p>
      </div>
      <p class="safety-step">
        {step ? (
          <>
            Step <b>{step.now}</b> of {step.all}
          </>
        ) : null}
      </p>
      <ol class="safety-lever" aria-hidden="true">
        {PLACES.map((stop) => (
          <li key={stop} data-here={stop === place ? (onTheWayTo ? 'leaving' : 'standing') : 'no'}>
            {PLACE_WORDS[stop]}
          </li>
        ))}
      </ol>
    </section>
  );
}
