import type { JSX } from 'preact';
import type { Proof } from '../../flows/job-context.ts';
import './proof-counter.css';

/** Ties drawn one by one; a longer proof is drawn as a share of the strand. */
const MOST_DRAWN = 60;

/** The count of clean ties as the figure, and as knots along a strand: filled for tied, hollow for still to come. */
export function ProofCounter({ proof }: { readonly proof: Proof }): JSX.Element {
  const { clean, needed } = proof;
  return (
    <section class="proof-counter" aria-label="Proof of the repair">
      <p class="proof-figure" aria-live="polite">
        <b>{clean}</b> of {needed}
      </p>
      <p class="proof-caption">clean ties in a row</p>
      {needed <= MOST_DRAWN ? (
        <ol class="proof-ties" aria-hidden="true">
          {Array.from({ length: needed }, (_, tie) => (
            <li key={tie} data-tied={tie < clean} />
          ))}
        </ol>
      ) : (
        <div class="proof-share" aria-hidden="true">
          <div style={{ width: `${(100 * clean) / needed}%` }} />
        </div>
      )}
    </section>
  );
}
