import type { JSX } from 'preact';

interface ChoiceGroupProps<Value> {
  readonly legend: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly chosen: Value;
  onChoose(value: Value): void;
}

/** One of a few, each a button. */
export function ChoiceGroup<Value extends string | number | undefined>({
  legend,
  options,
  chosen,
  onChoose,
}: ChoiceGroupProps<Value>): JSX.Element {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="choice-row">
        {options.map(({ value, label }) => (
          <button type="button" key={label} aria-pressed={value === chosen} onClick={() => onChoose(value)}>
            {label}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
