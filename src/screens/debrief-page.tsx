import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { checkQuestion } from '../../flows/diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId } from '../../flows/diagnosis/evidence.ts';
import type { Debrief } from '../../flows/drill/debrief.ts';
import { NEXT_LINES } from '../../flows/drill/debrief-said.ts';
import type { DrillEntry } from '../../flows/drill/drill.ts';
import { hazardById, trapById } from '../../flows/drill/hazards.ts';
import { LEVELS } from '../../flows/drill/levels.ts';
import type { Path, PathStep } from '../../flows/drill/path.ts';
import { WEIGHTS } from '../../flows/drill/score.ts';
import { FAMILIES } from '../../flows/families/all.ts';
import { taughtForm } from '../../grammar/lexicon.ts';
import { handOut } from '../report/hand-out.ts';
import { Page } from './page.tsx';
import { asSentence } from './sentence.ts';

interface DebriefPageProps {
  readonly debrief: Debrief;
  onAgain(): void;
}

/** What was hidden, what the trainee did against the best way, when safety was at stake, and what to keep in mind. */
export function DebriefPage({ debrief, onAgain }: DebriefPageProps): JSX.Element {
  const comment = useSignal('');
  const { hidden, score, belief, timeline, rules } = debrief;
  const save = () => {
    const text = JSON.stringify({ ...debrief, comment: comment.value.trim() }, undefined, 2);
    void handOut(new File([text], `knotwright-drill-${debrief.seed}.json`, { type: 'application/json' }));
  };
  return (
    <Page title="Debrief">
      <p class="drill-warning">{debrief.notice}</p>
      <p class="debrief-points" role="status">
        {score.fatal ? 'Stopped by a fatal error' : `${Math.round(score.points)} of 100`}
        {score.fatal ? '' : score.passed ? ', passed' : ', not passed'}
      </p>
      <p>
        Drill {debrief.seed}, level {debrief.level}: {LEVELS[debrief.level].title}.
        {debrief.trainee ? ` Trainee: ${debrief.trainee}.` : ''} {NEXT_LINES[debrief.next]}
      </p>
      <section>
        <h2>Keep in mind</h2>
        <ul>
          {rules.map((rule) => (
            <li key={rule}>{rule}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>What was hidden</h2>
        <p>
          {hidden.faults.map(asSentence).join('. Beside it: ')}, on the {hidden.side}. It looks like{' '}
          {hidden.looksLike}.
        </p>
        <table class="debrief-table">
          <caption class="for-ears">How sure the tables were of the hidden fault, after each answer</caption>
          <thead>
            <tr>
              <th scope="col">After</th>
              <th scope="col">Sure of it</th>
            </tr>
          </thead>
          <tbody>
            {belief.map(({ after, probability }, at) => (
              <tr key={at}>
                <td>{questionText(after)}</td>
                <td>{Math.round(100 * probability)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {score.fatal ? null : <PointsTable score={score} />}
      <section>
        <h2>Your way, and the shortest by the tables</h2>
        <p>
          Minutes are the tables’ estimates, not the clock’s. The job chooses its own order, so what costs
          here is a wrong or missing answer, a repair in vain, or a lockout given up for nothing.
        </p>
        <PathTable title="Your way" path={score.trainee} />
        <PathTable title="By the tables, every answer as shown" path={score.policy} />
      </section>
      <section>
        <h2>What happened when</h2>
        <ol>
          {timeline.map(({ atS, entry }, at) => (
            <li key={at} data-kind={entry.kind}>
              <b>{clockText(atS)}</b> {entryText(entry)}
            </li>
          ))}
        </ol>
      </section>
      <label class="debrief-comment">
        The trainer’s comment
        <input
          type="text"
          autocomplete="off"
          value={comment.value}
          onInput={(event) => {
            comment.value = event.currentTarget.value;
          }}
        />
      </label>
      <div class="choice-row no-print">
        <button type="button" onClick={save}>
          Save as a file
        </button>
        <button type="button" onClick={() => print()}>
          Print
        </button>
        <button type="button" onClick={onAgain}>
          Another drill
        </button>
      </div>
    </Page>
  );
}

const PARTS = [
  { part: 'safety', words: 'Safety: hazards noticed in time' },
  { part: 'efficiency', words: 'Minutes, against the shortest way' },
  { part: 'evidence', words: 'Evidence read as shown' },
  { part: 'verification', words: 'Clean ties counted' },
  { part: 'record', words: 'Brought to a proper end' },
] as const;

function PointsTable({ score }: Pick<Debrief, 'score'>): JSX.Element {
  return (
    <section>
      <h2>Points</h2>
      <table class="debrief-table">
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">At most</th>
            <th scope="col">Got</th>
          </tr>
        </thead>
        <tbody>
          {PARTS.map(({ part, words }) => (
            <tr key={part}>
              <td>{words}</td>
              <td>{Math.round(100 * WEIGHTS[part])}</td>
              <td>{Math.round(100 * WEIGHTS[part] * score[part])}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function PathTable({ title, path }: { readonly title: string; readonly path: Path }): JSX.Element {
  return (
    <table class="debrief-table">
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Minutes</th>
        </tr>
      </thead>
      <tbody>
        {path.steps.map((step, at) => (
          <tr key={at}>
            <td>{stepText(step)}</td>
            <td>{step.minutes.toFixed(1)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">All together</th>
          <td>{path.minutes.toFixed(1)}</td>
        </tr>
      </tbody>
    </table>
  );
}

function stepText({ kind, of, said }: PathStep): string {
  switch (kind) {
    case 'lockout':
      return 'Locking the machine out';
    case 'repairInVain':
      return `Repaired in vain: ${questionText(of)}`;
    case 'evidence':
    case 'check':
      return said && said !== 'yes'
        ? `${questionText(of)} ${asSentence(taughtForm(said))}.`
        : questionText(of);
  }
}

/** A question, a check or a repair, in the words the job uses. */
function questionText(id: string): string {
  const [kind, first = '', second = ''] = id.split('.');
  if (kind === 'start') return 'The beginning';
  if (kind === 'symptom') return 'What it does';
  if (kind === 'evidence') return EVIDENCE[first as EvidenceId].ask;
  const family = FAMILIES.find((each) => each.id === first);
  if (kind === 'repair') return asSentence(family?.causes[second]?.name ?? second);
  return family ? (family.checks[second]?.ask ?? checkQuestion(family.id, second)) : id;
}

function entryText(entry: DrillEntry): string {
  switch (entry.kind) {
    case 'said':
      return `You: ${asSentence(taughtForm(entry.meaning) || 'a number')}.`;
    case 'happened':
      return `It happened: ${hazardById(entry.hazard).happens}`;
    case 'passed':
      return trapById(entry.hazard).passes ?? '';
    case 'noticed':
      return `You noticed, after ${Math.round(entry.afterMs / 1000)} seconds.`;
    case 'fatal':
      return `Fatal: you went on. ${hazardById(entry.hazard).happens}`;
  }
}

function clockText(atS: number): string {
  return `${Math.floor(atS / 60)}:${String(atS % 60).padStart(2, '0')}`;
}
