import type { JSX } from 'preact';
import type { Finding, JobCard } from './card.ts';
import { Excluded, Findings, Heading, Lines, Parts, Section, Suspects } from './card-sections.tsx';
import { sentence } from './words.ts';
import './job-card.css';

/** What fits on one page; whatever is left out is in the job card, and the page says so. */
const MOST = { findings: 9, repairs: 3, suspects: 3, excluded: 3, parts: 2, unresolved: 3 } as const;

/** One page for whoever takes the machine over: a dealer, a technician, the next shift. */
export function HandOverSheet({ card }: { readonly card: JobCard }): JSX.Element {
  const tried = card.repairs.map(
    ({ cause, outcome, proof }) =>
      `${sentence(cause)} ${outcome === 'proved' ? 'Put right and proved' : outcome === 'done' ? 'Put right, not proved' : 'Put right, and it still missed'}. ${proof?.claim ?? ''}`,
  );
  return (
    <article class="paper one-page">
      <Heading title="Hand-over" card={card} />
      <Section title="Machine as left">
        <p>
          <b>{card.machineAsLeft}</b> Do not rely on it: lock it out yourself.
        </p>
      </Section>
      <div class="side-by-side">
        <Section title="Do not">
          <Lines lines={card.notToDo} />
        </Section>
        <Section title="Before anything else">
          <Lines lines={card.cautions} />
        </Section>
      </div>
      <Section title="Found">
        <Findings findings={tellingFindings(card.findings)} />
        <LeftOut count={card.findings.length - MOST.findings} />
      </Section>
      {tried.length > 0 ? (
        <Section title="Tried">
          <Lines lines={tried.slice(-MOST.repairs)} />
        </Section>
      ) : null}
      {card.suspects.length > 0 ? (
        <Section title="Suspected (probabilities rest on expert estimates)">
          <Suspects suspects={card.suspects.slice(0, MOST.suspects)} />
        </Section>
      ) : null}
      {card.excluded.length > 0 ? (
        <Section title="Excluded by what was found">
          <Excluded causes={card.excluded.slice(0, MOST.excluded)} />
          <LeftOut count={card.excluded.length - MOST.excluded} />
        </Section>
      ) : null}
      {card.parts.length > 0 ? (
        <Section title="Parts">
          <Parts parts={card.parts.slice(-MOST.parts)} />
          <LeftOut count={card.parts.length - MOST.parts} />
        </Section>
      ) : null}
      {card.unresolved.length > 0 ? (
        <Section title="Left open">
          <Lines lines={card.unresolved.slice(0, MOST.unresolved)} />
          <LeftOut count={card.unresolved.length - MOST.unresolved} />
        </Section>
      ) : null}
    </article>
  );
}

/** Where there are too many: what the string told first, then what points at a fault, then the latest. */
function tellingFindings(findings: JobCard['findings']): JobCard['findings'] {
  const ranked = [...findings].reverse().sort((a, b) => rankOf(b) - rankOf(a));
  const chosen = new Set(ranked.slice(0, MOST.findings));
  return findings.filter((finding) => chosen.has(finding));
}

function rankOf({ kind, pointsAtFault }: Finding): number {
  if (kind === 'evidence') return 2;
  return pointsAtFault ? 1 : 0;
}

function LeftOut({ count }: { readonly count: number }): JSX.Element | null {
  return count > 0 ? <p class="standing">And {count} more in the job card.</p> : null;
}
