import type { JSX } from 'preact';
import { CAUTIONS } from '../cautions.ts';

/** Shown at the start of every day and on the first run. */
export function Cautions(): JSX.Element {
  return (
    <section class="cautions" aria-label="Cautions">
      <h2>First</h2>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
