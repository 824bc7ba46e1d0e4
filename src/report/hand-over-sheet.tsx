import type { JSX } from 'preact';
import type { JobCard } from './card.ts';
import { Findings, Heading, Lines, Parts, Section, Suspects } from './card-sections.tsx';
import './job-card.css';

/** What fits on one page; whatever is left out is in the job card, and the page says so. */
const MOST = { findings: 10, suspects: 4, excluded: 5, parts: 4, unresolved: 4 } as const;

/** One page for whoever takes the machine over: a dealer, a technician, the next shift. */
export function HandOverSheet({ card }: { readonly card: JobCard }): JSX.Element {
  const tried = card.repairs.map(
    ({ cause, outcome, proof }) =>
      `${cause}: ${outcome === 'proved' ? 'put right and proved' : outcome === 'done' ? 'put right, not proved' : 'put right, and it still missed'}. ${proof?.claim ?? ''}`,
  );
  return (
    <article class="paper one-page">
      <Heading title="Hand-over" card={card} />
      <Section title="Machine as left">
        <p>
          <b>{card.machineAsLeft}</b> Do not rely on it: lock it out yourself.
        </p>
      </Section>
      <Section title="Found">
        <Findings findings={card.findings.slice(-MOST.findings)} />
        <LeftOut count={card.findings.length - MOST.findings} />
      </Section>
      {tried.length > 0 ? (
        <Section title="Tried">
          <Lines lines={tried.slice(-MOST.parts)} />
        </Section>
      ) : null}
      {card.suspects.length > 0 ? (
        <Section title="Suspected (probabilities rest on expert estimates)">
          <Suspects suspects={card.suspects.slice(0, MOST.suspects)} />
        </Section>
      ) : null}
      {card.excluded.length > 0 ? (
        <Section title="As good as excluded, by these findings">
          <Suspects suspects={card.excluded.slice(0, MOST.excluded)} />
          <LeftOut count={card.excluded.length - MOST.excluded} />
        </Section>
      ) : null}
      {card.parts.length > 0 ? (
        <Section title="Parts">
          <Parts parts={card.parts.slice(-MOST.parts)} />
        </Section>
      ) : null}
      {card.unresolved.length > 0 ? (
        <Section title="Left open">
          <Lines lines={card.unresolved.slice(0, MOST.unresolved)} />
          <LeftOut count={card.unresolved.length - MOST.unresolved} />
        </Section>
      ) : null}
      <Section title="Do not">
        <Lines lines={card.notToDo} />
      </Section>
      <Section title="Before anything else">
        <Lines lines={card.cautions} />
      </Section>
    </article>
  );
}

function LeftOut({ count }: { readonly count: number }): JSX.Element | null {
  return count > 0 ? <p class="standing">And {count} more in the job card.</p> : null;
}
