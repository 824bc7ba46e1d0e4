import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { compared, exportedCounts } from '../../flows/diagnosis/learning.ts';
import { familyById } from '../../flows/families/all.ts';
import { forgotten, type Learnt } from '../records/learnt.ts';
import { handOut } from '../report/hand-out.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { Page } from './page.tsx';

/** What this tablet has learnt from its own jobs, beside the estimates it came with; used only if somebody says so. */
export function LearntScreen({ learnt }: { readonly learnt: Signal<Learnt> }): JSX.Element {
  const { counts, isUsed } = learnt.value;
  const rows = compared(counts).filter(({ jobs }) => jobs > 0);
  return (
    <Page title="Learnt here">
      <p>
        {counts.jobs === 0
          ? 'No job with a proved repair has been closed on this tablet yet. The estimates are those of experts.'
          : `${counts.jobs} ${counts.jobs === 1 ? 'job' : 'jobs'} with a proved repair. New jobs use what is chosen here; open jobs keep what they began with.`}
      </p>
      <div class="page-form">
        <ChoiceGroup
          legend="Estimates for new jobs"
          options={[
            { value: 'seed', label: 'As the app came' },
            { value: 'learnt', label: 'With what was learnt here' },
          ]}
          chosen={isUsed ? 'learnt' : 'seed'}
          onChoose={(chosen) => {
            learnt.value = { counts, isUsed: chosen === 'learnt' };
          }}
        />
      </div>
      {rows.length > 0 ? (
        <table>
          <thead>
            <tr>
              <th scope="col">Kind and cause</th>
              <th scope="col">Jobs</th>
              <th scope="col">Came with</th>
              <th scope="col">Learnt</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ family, cause, jobs, seed, learnt: now }) => (
              <tr key={`${family} ${cause ?? ''}`}>
                <th scope="row">
                  {(cause && familyById(family).causes[cause]?.name) ?? familyById(family).name}
                </th>
                <td>{jobs}</td>
                <td>{percent(seed)}</td>
                <td>{percent(now)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <div class="choice-row">
        <button
          type="button"
          disabled={counts.jobs === 0}
          onClick={() =>
            void handOut(
              new File([exportedCounts(counts)], 'knotwright-learnt.json', { type: 'application/json' }),
            )
          }
        >
          Save to a file
        </button>
        <button
          type="button"
          disabled={counts.jobs === 0}
          onClick={() => {
            learnt.value = forgotten();
          }}
        >
          Forget it all
        </button>
      </div>
    </Page>
  );
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
