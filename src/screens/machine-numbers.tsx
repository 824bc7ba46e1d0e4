import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { inputOf } from '../../flows/figures-asked/inputs.ts';
import {
  findingLabels,
  MACHINE_VALUE_IDS,
  MACHINE_VALUES,
  type MachineValueId,
  measureOf,
} from '../../flows/machine-values.ts';
import type { MachineProfile } from '../records/machine.ts';
import {
  figureDraftsOf,
  KEPT_INPUTS,
  type KeptInput,
  type LimitDraft,
  limitDraftsOf,
  machineNumbers,
} from './machine-drafts.ts';
import './machine-numbers.css';
import { UNIT_LABELS, unitsOf } from './number-entry.ts';

interface MachineNumbersProps {
  readonly profile: MachineProfile;
  onChange(numbers: Pick<MachineProfile, 'bands' | 'figures'>): void;
  /** One sentence while something typed cannot be kept; empty when it can. */
  onTrouble(sentence: string): void;
}

/** The numbers of one machine: limits that go before the typical ones, and what figures need not ask for. */
export function MachineNumbers({ profile, onChange, onTrouble }: MachineNumbersProps): JSX.Element {
  const limits = useSignal(limitDraftsOf(profile.bands ?? []));
  const figures = useSignal(figureDraftsOf(profile.figures ?? {}));
  const tell = () => {
    const numbers = machineNumbers(limits.value, figures.value);
    onTrouble(numbers.kind === 'trouble' ? numbers.sentence : '');
    if (numbers.kind === 'value') onChange(numbers.value);
  };
  return (
    <>
      <details class="machine-numbers">
        <summary>Its own limits</summary>
        <p>
          What the manual of this machine says goes before what is typical. Leave blank what you do not know.
        </p>
        {MACHINE_VALUE_IDS.map((id) => (
          <Limits
            key={id}
            id={id}
            draft={limits.value[id]}
            onDraft={(draft) => {
              limits.value = { ...limits.value, [id]: draft };
              tell();
            }}
          />
        ))}
      </details>
      <details class="machine-numbers">
        <summary>Its bales and its twine</summary>
        <p>What is given here is not asked for when you want a figure.</p>
        {KEPT_INPUTS.map((id) => (
          <label key={id}>
            {inputOf(id).name.replace(/:$/, '')}
            {unitOf(id) ? `, ${unitOf(id)}` : ''}
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={figures.value[id]}
              onInput={(event) => {
                figures.value = { ...figures.value, [id]: event.currentTarget.value };
                tell();
              }}
            />
          </label>
        ))}
      </details>
    </>
  );
}

interface LimitsProps {
  readonly id: MachineValueId;
  readonly draft: LimitDraft;
  onDraft(draft: LimitDraft): void;
}

function Limits({ id, draft, onDraft }: LimitsProps): JSX.Element {
  const { typically, provenance, dimension } = measureOf(id);
  const labels = findingLabels(id);
  return (
    <fieldset class="machine-limits">
      <legend>{MACHINE_VALUES[id].name}</legend>
      <p>
        {typically} That is {provenance}: check the operator’s manual of your machine.
      </p>
      {draft.amounts.map((amount, at) => (
        <label key={labels[at]}>
          Below this: “{labels[at]}” From here on: “{labels[at + 1]}”
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={amount}
            onInput={(event) => {
              const typed = event.currentTarget.value;
              onDraft({
                ...draft,
                amounts: draft.amounts.map((each, index) => (index === at ? typed : each)),
              });
            }}
          />
        </label>
      ))}
      <div class="choice-row">
        {unitsOf(dimension, 'inch').map((unit) => (
          <button
            type="button"
            key={unit}
            aria-pressed={draft.unit === unit}
            onClick={() => onDraft({ ...draft, unit })}
          >
            {UNIT_LABELS[unit]}
          </button>
        ))}
      </div>
      <label>
        Where that comes from
        <input
          type="text"
          autocomplete="off"
          value={draft.source}
          onInput={(event) => onDraft({ ...draft, source: event.currentTarget.value })}
        />
      </label>
    </fieldset>
  );
}

function unitOf(id: KeptInput): string {
  const { takes } = inputOf(id);
  return takes.kind === 'measurement' ? UNIT_LABELS[takes.unit] : '';
}
