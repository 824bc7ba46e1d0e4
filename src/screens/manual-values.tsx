import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { MachineProfile } from '../records/machine.ts';
import { BLANK_MANUAL, type ManualDraft, manualValuesOf } from './machine-drafts.ts';
import './machine-numbers.css';

interface ManualValuesProps {
  readonly profile: MachineProfile;
  onChange(manualValues: MachineProfile['manualValues']): void;
  /** One sentence while something typed cannot be kept; empty when it can. */
  onTrouble(sentence: string): void;
}

const FIELDS = [
  { field: 'name', label: 'What it is a value of', isNumber: false },
  { field: 'amount', label: 'Value', isNumber: true },
  { field: 'unit', label: 'Unit', isNumber: false },
  { field: 'source', label: 'Where that comes from', isNumber: false },
] as const satisfies readonly {
  readonly field: keyof ManualDraft;
  readonly label: string;
  readonly isNumber: boolean;
}[];

/** Values of its manual that no check of this app measures, in the words of whoever wrote them down. */
export function ManualValues({ profile, onChange, onTrouble }: ManualValuesProps): JSX.Element {
  const drafts = useSignal<readonly ManualDraft[]>(
    profile.manualValues.map(({ amount, ...rest }) => ({ ...rest, amount: String(amount) })),
  );
  const change = (next: readonly ManualDraft[]) => {
    drafts.value = next;
    const values = manualValuesOf(next);
    onTrouble(values.kind === 'trouble' ? values.sentence : '');
    if (values.kind === 'value') onChange(values.value);
  };
  return (
    <details class="machine-numbers">
      <summary>Other values of its manual</summary>
      <p>They stand on every job card of this baler. One with nothing in it is left out.</p>
      {drafts.value.map((draft, at) => (
        <fieldset key={at} class="machine-limits">
          <legend>{draft.name || 'A value'}</legend>
          {FIELDS.map(({ field, label, isNumber }) => (
            <label key={field}>
              {label}
              <input
                type="text"
                inputMode={isNumber ? 'decimal' : 'text'}
                autocomplete="off"
                value={draft[field]}
                onInput={(event) => {
                  const typed = event.currentTarget.value;
                  change(
                    drafts.value.map((each, index) => (index === at ? { ...each, [field]: typed } : each)),
                  );
                }}
              />
            </label>
          ))}
          <button type="button" onClick={() => change(drafts.value.filter((_, index) => index !== at))}>
            Take it out
          </button>
        </fieldset>
      ))}
      <button type="button" onClick={() => change([...drafts.value, BLANK_MANUAL])}>
        Add a value
      </button>
    </details>
  );
}
