import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { MachineProfile } from '../records/machine.ts';
import { WearChart, wearText } from '../report/wear-chart.tsx';
import './machine-numbers.css';
import { BLANK_WEAR, type WearDraft, wearDraftOf, wearingParts } from './wear-drafts.ts';

interface WearPartsProps {
  readonly profile: MachineProfile;
  onChange(wear: NonNullable<MachineProfile['wear']>): void;
  /** One sentence while something typed cannot be kept; empty when it can. */
  onTrouble(sentence: string): void;
}

/** Parts whose wear is measured now and then, each with its line and when it will be done. */
export function WearParts({ profile, onChange, onTrouble }: WearPartsProps): JSX.Element {
  const drafts = useSignal<readonly WearDraft[]>((profile.wear ?? []).map(wearDraftOf));
  const change = (next: readonly WearDraft[]) => {
    drafts.value = next;
    const parts = wearingParts(next);
    onTrouble(parts.kind === 'trouble' ? parts.sentence : '');
    if (parts.kind === 'value') onChange(parts.value);
  };
  return (
    <details class="machine-numbers">
      <summary>Wear that is measured</summary>
      {drafts.value.map((draft, at) => (
        <WearPart
          key={at}
          draft={draft}
          onDraft={(next) => change(drafts.value.map((each, index) => (index === at ? next : each)))}
        />
      ))}
      <button type="button" onClick={() => change([...drafts.value, BLANK_WEAR])}>
        Add a wearing part
      </button>
    </details>
  );
}

interface WearPartProps {
  readonly draft: WearDraft;
  onDraft(draft: WearDraft): void;
}

function WearPart({ draft, onDraft }: WearPartProps): JSX.Element {
  const parts = wearingParts([draft]);
  const [part] = parts.kind === 'value' ? parts.value : [];
  return (
    <fieldset class="machine-limits">
      <legend>{draft.name || 'A wearing part'}</legend>
      <TextField label="Part" value={draft.name} onText={(name) => onDraft({ ...draft, name })} />
      <TextField
        label="Wear at which it is done, millimetres"
        value={draft.limitMm}
        isNumber
        onText={(limitMm) => onDraft({ ...draft, limitMm })}
      />
      <TextField
        label="Where that limit comes from"
        value={draft.limitSource}
        onText={(limitSource) => onDraft({ ...draft, limitSource })}
      />
      <div class="choice-row">
        {(['new at zero', 'run in'] as const).map((from) => (
          <button
            type="button"
            key={from}
            aria-pressed={draft.from === from}
            onClick={() => onDraft({ ...draft, from })}
          >
            {from === 'new at zero' ? 'Fitted new at no bales' : 'Was run in before'}
          </button>
        ))}
      </div>
      {draft.readings.map((reading, at) => {
        const put = (changed: Partial<typeof reading>) =>
          onDraft({
            ...draft,
            readings: draft.readings.map((each, index) => (index === at ? { ...each, ...changed } : each)),
          });
        return (
          <div class="choice-row" key={at}>
            <TextField
              label="Bales on it"
              value={reading.bales}
              isNumber
              onText={(bales) => put({ bales })}
            />
            <TextField
              label="Wear, millimetres"
              value={reading.wearMm}
              isNumber
              onText={(wearMm) => put({ wearMm })}
            />
          </div>
        );
      })}
      <button
        type="button"
        onClick={() => onDraft({ ...draft, readings: [...draft.readings, { bales: '', wearMm: '' }] })}
      >
        Add a reading
      </button>
      {part ? (
        <>
          <p role="status">{wearText(part)}</p>
          <WearChart part={part} />
        </>
      ) : null}
    </fieldset>
  );
}

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly isNumber?: boolean;
  onText(text: string): void;
}

function TextField({ label, value, isNumber = false, onText }: TextFieldProps): JSX.Element {
  return (
    <label>
      {label}
      <input
        type="text"
        inputMode={isNumber ? 'decimal' : 'text'}
        autocomplete="off"
        value={value}
        onInput={(event) => onText(event.currentTarget.value)}
      />
    </label>
  );
}
