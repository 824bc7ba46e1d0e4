import type { JSX } from 'preact';
import type { PendingValue } from '../../flows/job-context.ts';
import { fractionText } from './fraction-text.ts';
import { UNIT_LABELS } from './number-entry.ts';
import './proof-counter.css';

/** A number that waits to be accepted, as large as it gets: what goes into the record if the answer is yes. */
export function ReadBack({ pending }: { readonly pending: PendingValue }): JSX.Element {
  return (
    <section class="proof-counter" aria-label="Number to be accepted">
      <p class="proof-figure">
        <b>
          {pending.kind === 'measurement'
            ? fractionText(pending.measurement)
            : `${pending.missCount.misses} of ${pending.missCount.bales}`}
        </b>
      </p>
      <p class="proof-caption">
        {pending.kind === 'measurement' ? UNIT_LABELS[pending.measurement.unit] : 'bales missed'}
      </p>
    </section>
  );
}
