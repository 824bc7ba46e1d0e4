import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { MachineProfile, MachineRevision } from '../records/machine.ts';
import type { Records } from '../records/records.ts';
import type { Kept } from '../records/trouble.ts';
import { LastReadings } from './last-readings.tsx';
import { MachineNumbers } from './machine-numbers.tsx';
import { ManualValues } from './manual-values.tsx';
import { Page } from './page.tsx';
import { WearParts } from './wear-parts.tsx';

const BLANK: MachineProfile = {
  name: '',
  makeAndModel: '',
  serialNumber: '',
  twine: '',
  notes: '',
  manualValues: [],
};

type TextField = 'name' | 'makeAndModel' | 'serialNumber' | 'twine' | 'settings' | 'notes';

const FIELDS: readonly { readonly field: TextField; readonly label: string }[] = [
  { field: 'name', label: 'What you call it' },
  { field: 'makeAndModel', label: 'Make and model, as on its plate' },
  { field: 'serialNumber', label: 'Serial number' },
  { field: 'twine', label: 'Twine it runs on' },
  { field: 'settings', label: 'How it is set: density, twine tension, bolts' },
  { field: 'notes', label: 'Notes' },
];

const NO_TROUBLE = { numbers: '', manual: '', wear: '' };

interface Editing {
  readonly machineId: string | undefined;
  readonly profile: MachineProfile;
}

/** The balers this tablet knows, in the words of the people who run them. */
export function MachinesScreen({ records }: { readonly records: Kept<Records> }): JSX.Element {
  const machines = useSignal<readonly MachineRevision[]>([]);
  const editing = useSignal<Editing | undefined>(undefined);
  const problem = useSignal(records.ok ? '' : records.trouble.sentence);
  /** Why the numbers cannot be kept as they are typed. */
  const typingTrouble = useSignal(NO_TROUBLE);

  const load = async () => {
    if (!records.ok) return;
    const found = await records.value.machines();
    if (found.ok) machines.value = found.value;
    else problem.value = found.trouble.sentence;
  };
  useEffect(() => {
    void load();
  }, [records]);

  const save = async ({ machineId, profile }: Editing) => {
    if (!records.ok) return;
    if (profile.name.trim() === '') {
      problem.value = 'Give the baler a name first, any name you call it by.';
      return;
    }
    const untaken = Object.values(typingTrouble.value).find((sentence) => sentence !== '');
    if (untaken) {
      problem.value = untaken;
      return;
    }
    const saved = await records.value.saveMachine(profile, machineId);
    problem.value = saved.ok ? '' : saved.trouble.sentence;
    if (saved.ok) editing.value = undefined;
    await load();
  };

  return (
    <Page title="Balers">
      {problem.value === '' ? null : (
        <p class="trouble" role="alert">
          {problem.value}
        </p>
      )}
      {editing.value ? (
        <MachineForm
          editing={editing.value}
          records={records}
          onChange={(profile) => {
            if (editing.value) editing.value = { ...editing.value, profile };
          }}
          onTrouble={(about, sentence) => {
            typingTrouble.value = { ...typingTrouble.value, [about]: sentence };
          }}
          onSave={() => {
            if (editing.value) void save(editing.value);
          }}
          onLeave={() => {
            typingTrouble.value = NO_TROUBLE;
            problem.value = '';
            editing.value = undefined;
          }}
        />
      ) : (
        <>
          <ul class="machine-list">
            {machines.value.map(({ machineId, profile }) => (
              <li key={machineId}>
                <button
                  type="button"
                  onClick={() => {
                    editing.value = { machineId, profile };
                  }}
                >
                  {profile.name}
                </button>
              </li>
            ))}
          </ul>
          <button
            type="button"
            class="page-go"
            onClick={() => {
              editing.value = { machineId: undefined, profile: BLANK };
            }}
          >
            Add a baler
          </button>
        </>
      )}
    </Page>
  );
}

interface MachineFormProps {
  readonly editing: Editing;
  readonly records: Kept<Records>;
  onChange(profile: MachineProfile): void;
  /** @param about which fields it is about  @param sentence empty when there is none any more */
  onTrouble(about: keyof typeof NO_TROUBLE, sentence: string): void;
  onSave(): void;
  onLeave(): void;
}

function MachineForm(props: MachineFormProps): JSX.Element {
  const { editing, records, onChange, onTrouble, onSave, onLeave } = props;
  const { machineId, profile } = editing;
  return (
    <form
      class="page-form"
      onSubmit={(event) => {
        event.preventDefault();
        onSave();
      }}
    >
      {FIELDS.map(({ field, label }) => (
        <label key={field}>
          {label}
          <input
            type="text"
            autocomplete="off"
            value={profile[field] ?? ''}
            onInput={(event) => onChange({ ...profile, [field]: event.currentTarget.value })}
          />
        </label>
      ))}
      <BaleCount profile={profile} onChange={onChange} />
      <MachineNumbers
        profile={profile}
        onChange={(numbers) => onChange({ ...profile, ...numbers })}
        onTrouble={(sentence) => onTrouble('numbers', sentence)}
      />
      <ManualValues
        profile={profile}
        onChange={(manualValues) => onChange({ ...profile, manualValues })}
        onTrouble={(sentence) => onTrouble('manual', sentence)}
      />
      <WearParts
        profile={profile}
        onChange={(wear) => onChange({ ...profile, wear })}
        onTrouble={(sentence) => onTrouble('wear', sentence)}
      />
      {records.ok && machineId ? (
        <LastReadings records={records.value} machineId={machineId} name={profile.name} />
      ) : null}
      <div class="choice-row">
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
        <button type="submit" class="page-go">
          Keep it
        </button>
      </div>
    </form>
  );
}

/** The reading of the bale counter; anything but digits is left out, an empty field means it has none. */
function BaleCount({
  profile,
  onChange,
}: Pick<MachineFormProps, 'onChange'> & { readonly profile: MachineProfile }) {
  return (
    <label>
      Bale counter
      <input
        type="text"
        inputMode="numeric"
        autocomplete="off"
        value={profile.baleCount ?? ''}
        onInput={({ currentTarget }) => {
          const { baleCount: _, ...rest } = profile;
          const digits = currentTarget.value.replaceAll(/\D/g, '').slice(0, 7);
          currentTarget.value = digits;
          onChange(digits === '' ? rest : { ...rest, baleCount: Number(digits) });
        }}
      />
    </label>
  );
}
