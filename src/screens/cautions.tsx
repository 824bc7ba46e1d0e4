import type { JSX } from 'preact';

/** What comes before anything this app says. Shown at the start of every day and on the first run. */
export const CAUTIONS = [
  'The operator’s manual of your machine comes first, then local rules, then licensed practice. This comes after them.',
  'A baler maims. Nothing here makes it safe to reach in while anything can move.',
  'Numbers without your own manual’s value are typical ones only.',
] as const;

export function Cautions(): JSX.Element {
  return (
    <section class="cautions" aria-label="Cautions">
      <h2>First</h2>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
