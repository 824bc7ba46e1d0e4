import type { JSX } from 'preact';
import { BeliefChart } from './belief-chart.tsx';
import type { JobCard } from './card.ts';
import {
  Excluded,
  Figures,
  Findings,
  Heading,
  Lines,
  LockoutLog,
  Parts,
  Repair,
  Section,
  Suspects,
} from './card-sections.tsx';
import { CountChart } from './count-chart.tsx';
import { countSentence } from './count-lines.ts';
import { Photos } from './photos.tsx';
import { WearChart, wearText } from './wear-chart.tsx';
import { momentText } from './words.ts';
import './job-card.css';

interface JobCardSheetProps {
  readonly card: JobCard;
  /** Where the browser finds the photos that are on this tablet, by their ids. */
  readonly photoUrls?: ReadonlyMap<string, string>;
}

/** The whole record of a job, laid out for an A4 or a Letter page. */
export function JobCardSheet({ card, photoUrls = new Map() }: JobCardSheetProps): JSX.Element {
  const { machine } = card;
  return (
    <article class="paper">
      <Heading title="Job card" card={card} />
      <Section title="Before anything else">
        <Lines lines={card.cautions} />
      </Section>
      <Section title="Found">
        <Findings findings={card.findings} />
      </Section>
      {card.repairs.length > 0 ? (
        <Section title="Put right, and proof">
          {card.repairs.map((repair, index) => (
            <Repair key={`${index}${repair.cause}`} repair={repair} />
          ))}
        </Section>
      ) : null}
      {card.parts.length > 0 ? (
        <Section title="Parts">
          <Parts parts={card.parts} />
        </Section>
      ) : null}
      {card.suspects.length > 0 ? (
        <Section title="Explanations, by how likely the findings make them">
          <Suspects suspects={card.suspects} />
          <p class="standing">Probabilities rest on expert estimates.</p>
          <BeliefChart path={card.beliefs} />
        </Section>
      ) : null}
      {card.excluded.length > 0 ? (
        <Section title="Excluded by what was found">
          <Excluded causes={card.excluded} />
        </Section>
      ) : null}
      {card.unresolved.length > 0 ? (
        <Section title="Left open">
          <Lines lines={card.unresolved} />
        </Section>
      ) : null}
      {card.figures.length > 0 ? (
        <Section title="Figures asked for">
          <Figures figures={card.figures} />
        </Section>
      ) : null}
      {card.count ? (
        <Section title="Bales counted">
          <p>{countSentence(card.count)}</p>
          <Lines lines={card.count.patterns} />
          <CountChart count={card.count} />
        </Section>
      ) : null}
      {card.photos.length > 0 ? (
        <Section title="Photos">
          <Photos photos={card.photos} urls={photoUrls} />
        </Section>
      ) : null}
      {card.notes.length > 0 ? (
        <Section title="Notes">
          <Lines lines={card.notes.map(({ atMs, text }) => `${momentText(atMs)}: ${text}`)} />
        </Section>
      ) : null}
      {machine && machine.manualValues.length > 0 ? (
        <Section title="Values entered for this machine">
          <Lines
            lines={machine.manualValues.map(
              ({ name, amount, unit, source }) => `${name}: ${amount} ${unit}, from ${source}`,
            )}
          />
        </Section>
      ) : null}
      {machine?.wear && machine.wear.length > 0 ? (
        <Section title="Wear lines of this machine">
          {machine.wear.map((part) => (
            <div key={part.name} class="wear">
              <p>{wearText(part)}</p>
              <WearChart part={part} />
            </div>
          ))}
        </Section>
      ) : null}
      <Section title="Lockout log, as read back, by the tablet’s clock">
        {card.lockout.length > 0 ? <LockoutLog lines={card.lockout} /> : <p>Nothing was locked out.</p>}
      </Section>
    </article>
  );
}
