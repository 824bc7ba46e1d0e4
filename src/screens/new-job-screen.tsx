import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { MachineRevision } from '../records/machine.ts';
import type { JobAbout, Records } from '../records/records.ts';
import type { Kept } from '../records/trouble.ts';
import { InitialsField } from './initials-field.tsx';
import { Page } from './page.tsx';

interface NewJobScreenProps {
  readonly records: Kept<Records>;
  /** @param first what the job opens with: its first question, or the count of bales */
  onBegin(about: JobAbout, first?: 'count'): void;
}

/** Which machine, and who. Both can be left out: a job never waits for paperwork. */
export function NewJobScreen({ records, onBegin }: NewJobScreenProps): JSX.Element {
  const machines = useSignal<readonly MachineRevision[]>([]);
  const machineId = useSignal<string | undefined>(undefined);
  const person = useSignal('');
  useEffect(() => {
    if (!records.ok) return;
    void records.value.machines().then((found) => {
      if (found.ok) machines.value = found.value;
    });
  }, [records]);
  const about = (): JobAbout => ({
    ...(machineId.value ? { machineId: machineId.value } : {}),
    ...(person.value.trim() ? { person: person.value.trim() } : {}),
  });
  return (
    <Page title="New job">
      <form
        class="page-form"
        onSubmit={(event) => {
          event.preventDefault();
          onBegin(about());
        }}
      >
        <fieldset>
          <legend>Which baler?</legend>
          <div class="choice-row">
            <button
              type="button"
              aria-pressed={machineId.value === undefined}
              onClick={() => {
                machineId.value = undefined;
              }}
            >
              Not listed
            </button>
            {machines.value.map(({ machineId: id, profile }) => (
              <button
                type="button"
                key={id}
                aria-pressed={machineId.value === id}
                onClick={() => {
                  machineId.value = id;
                }}
              >
                {profile.name}
              </button>
            ))}
          </div>
        </fieldset>
        <InitialsField label="Your initials, if you like" initials={person} />
        <button type="submit" class="page-go">
          Begin
        </button>
        <button type="button" onClick={() => onBegin(about(), 'count')}>
          Count bales first
        </button>
      </form>
    </Page>
  );
}
