import type { ComponentChildren, JSX } from 'preact';
import type {
  FigureLine,
  JobCard,
  LockoutLine,
  PartLine,
  ProofLine,
  RepairLine,
  Suspect,
  Urgency,
  WhichSide,
} from './card.ts';
import { partName } from './findings.ts';
import { MissRateChart, missRateSentence } from './miss-rate-chart.tsx';
import { measurementText, momentText, percentText, sentence, timeText } from './words.ts';

const STATUS_TEXTS: Readonly<Record<JobCard['status'], string>> = {
  open: 'still open',
  closed: 'closed',
  handedOver: 'handed over',
};

const SIDE_TEXTS: Readonly<Record<WhichSide, string>> = {
  left: 'left, seen from behind',
  right: 'right, seen from behind',
  both: 'both',
  nowOneNowTheOther: 'now one, now the other',
};

const OUTCOME_TEXTS: Readonly<Record<RepairLine['outcome'], string>> = {
  done: 'Done, not proved',
  proved: 'Done and proved',
  stillMisses: 'Done, still missed',
};

const URGENCY_TEXTS: Readonly<Record<Urgency, string>> = {
  now: 'now',
  beforeNextCutting: 'before the next cutting',
  endOfSeason: 'by the end of the season',
};

export function Section({
  title,
  children,
}: {
  readonly title: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <section>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

/** Who, when, which machine, which side, and the fault in the person's own words. */
export function Heading({ title, card }: { readonly title: string; readonly card: JobCard }): JSX.Element {
  const { machine, person, side, status, startedAtMs, lastAtMs, symptom, jobId } = card;
  return (
    <header>
      <h1>{title}</h1>
      <dl class="facts">
        <Fact name="Job">{jobId.slice(0, 8)}</Fact>
        <Fact name="State">{STATUS_TEXTS[status]}</Fact>
        <Fact name="From">{momentText(startedAtMs)}</Fact>
        <Fact name="To">{momentText(lastAtMs)}</Fact>
        <Fact name="By">{person ?? 'not said'}</Fact>
        <Fact name="Side">{side ? SIDE_TEXTS[side] : 'not said'}</Fact>
        <Fact name="Machine">
          {machine
            ? [machine.name, machine.makeAndModel, machine.serialNumber].filter(Boolean).join(', ')
            : 'not said'}
        </Fact>
        {machine?.baleCount === undefined ? null : <Fact name="Bale counter">{machine.baleCount}</Fact>}
        {machine?.twine ? <Fact name="Twine">{machine.twine}</Fact> : null}
        {machine?.settings ? <Fact name="Settings">{machine.settings}</Fact> : null}
      </dl>
      {symptom ? (
        <p class="symptom">
          <q>{symptom.words}</q>
          <span> {symptom.by === 'voice' ? 'as said' : 'by button'}</span>
        </p>
      ) : null}
    </header>
  );
}

function Fact({
  name,
  children,
}: {
  readonly name: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What was found, with the number, the band and where the band comes from. */
export function Findings({ findings }: Pick<JobCard, 'findings'>): JSX.Element {
  if (findings.length === 0) return <p>Nothing was found yet.</p>;
  return (
    <table class="findings">
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Asked</th>
          <th scope="col">Found</th>
        </tr>
      </thead>
      <tbody>
        {findings.map(({ part, asked, answer, measured, pointsAtFault, atMs }) => (
          <tr key={`${asked}${atMs}`} class={pointsAtFault ? 'fault' : ''}>
            <td>{partName(part)}</td>
            <td>{asked}</td>
            <td>
              {pointsAtFault ? <b>{answer}</b> : answer}
              {measured ? (
                <span class="measured">
                  <b> {measurementText(measured.value)}.</b>{' '}
                  {measured.own ? (
                    <>
                      Judged by your own {measured.own.limits.map(measurementText).join(' to ')}, from{' '}
                      {measured.own.source}.{' '}
                    </>
                  ) : null}
                  <i>
                    {measured.typically} That is {measured.provenance}: check the operator’s manual of your
                    machine.
                  </i>
                </span>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function Repair({ repair }: { readonly repair: RepairLine }): JSX.Element {
  const { cause, steps, outcome, proof } = repair;
  return (
    <div class="repair">
      <p>
        <b>{sentence(cause)}</b> {OUTCOME_TEXTS[outcome]}.
      </p>
      <ol>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {proof ? <Proof proof={proof} /> : null}
    </div>
  );
}

/** Before and after, in plain words for whoever pays. */
function Proof({ proof }: { readonly proof: ProofLine }): JSX.Element {
  const { claim, needed, clean, atMost, chanceOfNoChange } = proof;
  return (
    <div class="proof">
      <p>
        <b>{claim}</b> Good ties counted: {clean} of {needed} needed in a row; the first tie after threading
        does not count.
      </p>
      {atMost === undefined ? null : (
        <>
          <p>
            {missRateSentence(proof)}
            {chanceOfNoChange === undefined
              ? null
              : ` Had the repair changed nothing, a run this clean would come about in ${percentText(chanceOfNoChange)} of cases.`}
          </p>
          <MissRateChart proof={proof} />
        </>
      )}
    </div>
  );
}

/** Parts with the measured reason and a blank for the maker's number, copied from the parts book by hand. */
export function Parts({ parts }: { readonly parts: readonly PartLine[] }): JSX.Element {
  return (
    <table class="parts">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Side</th>
          <th scope="col">Why</th>
          <th scope="col">When</th>
          <th scope="col">How many</th>
          <th scope="col">Maker’s number</th>
          <th scope="col">Old part kept</th>
        </tr>
      </thead>
      <tbody>
        {parts.map(({ name, side, reason, state, quantity, urgency }) => (
          <tr key={`${name}${state}`}>
            <td>{name}</td>
            <td>{side ? SIDE_TEXTS[side].split(',', 1) : ''}</td>
            <td>{reason}</td>
            <td>
              {state === 'toOrder' ? 'To order' : 'Fitted; to have again'}: {URGENCY_TEXTS[urgency]}
            </td>
            <td class={quantity === undefined ? 'blank' : ''}>{quantity}</td>
            <td class="blank" />
            <td class="blank" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function Suspects({ suspects }: { readonly suspects: readonly Suspect[] }): JSX.Element {
  return (
    <ul class="suspects">
      {suspects.map(({ cause, probability, because }) => (
        <li key={cause}>
          <b>{percentText(probability)}</b> {sentence(cause)}
          {because.length > 0 ? <span class="because"> Seen: {because.join(' ')}</span> : null}
        </li>
      ))}
    </ul>
  );
}

/** Causes nobody needs to look for again: by what was found, however likely they were to begin with. */
export function Excluded({ causes }: { readonly causes: readonly Suspect[] }): JSX.Element {
  return (
    <ul class="suspects">
      {causes.map(({ cause, because }) => (
        <li key={cause}>
          {sentence(cause)} <span class="because">Seen: {because.join(' ')}</span>
        </li>
      ))}
    </ul>
  );
}

export function LockoutLog({ lines }: { readonly lines: readonly LockoutLine[] }): JSX.Element {
  return (
    <ol class="lockout">
      {lines.map((line, index) => (
        <li key={`${index}${line.atMs}`} class={line.kind}>
          <time>{timeText(line.atMs)}</time> <LockoutText line={line} />
        </li>
      ))}
    </ol>
  );
}

function LockoutText({ line }: { readonly line: LockoutLine }): JSX.Element {
  switch (line.kind) {
    case 'confirmed':
      return (
        <span>
          {line.text} {line.by === 'button' ? <i>by button, </i> : null}
          <i>{line.answersTo[0]}</i>
        </span>
      );
    case 'reached':
      return <b>{line.text}</b>;
    case 'voided':
      return <b>LOCKOUT OFF: {line.text}</b>;
    case 'notTaken':
      return <span>Not taken, said too unclearly: {line.text}</span>;
  }
}

/** Figures that were asked for, with the small print that belongs to each. */
export function Figures({ figures }: { readonly figures: readonly FigureLine[] }): JSX.Element {
  return (
    <ul>
      {figures.map(({ atMs, text, granted }) => (
        <li key={`${atMs}${text}`}>
          {timeText(atMs)} {text}
          {granted.length > 0 ? <span class="because"> Taken for granted: {granted.join(' ')}</span> : null}
        </li>
      ))}
    </ul>
  );
}

export function Lines({ lines }: { readonly lines: readonly string[] }): JSX.Element {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
