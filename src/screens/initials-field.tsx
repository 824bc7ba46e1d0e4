import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';

/** Initials are asked for, not names: a record should say who, and no more than that. */
const MOST_INITIALS = 4;

/** Where somebody may say who they are. */
export function InitialsField({
  label,
  initials,
}: {
  readonly label: string;
  readonly initials: Signal<string>;
}): JSX.Element {
  return (
    <label>
      {label}
      <input
        type="text"
        autocomplete="off"
        maxLength={MOST_INITIALS}
        value={initials.value}
        onInput={(event) => {
          initials.value = event.currentTarget.value;
        }}
      />
    </label>
  );
}
