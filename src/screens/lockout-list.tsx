import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './lockout-list.css';
import type { ListedStep } from './lockout-progress.ts';

const MARK_WORDS = { done: 'done', now: 'now', ahead: 'to do' } as const;

/** The sixteen steps in order: seven until eyes may go in, nine more until hands may. */
export function LockoutList({ steps }: { readonly steps: readonly ListedStep[] }): JSX.Element {
  const list = useRef<HTMLOListElement>(null);
  const now = steps.findIndex(({ mark }) => mark === 'now');
  useEffect(() => {
    const row = list.current?.children[now];
    if (row instanceof HTMLElement && list.current) {
      list.current.scrollTop = row.offsetTop - list.current.clientHeight / 2 + row.offsetHeight / 2;
    }
  }, [now]);
  return (
    <section class="lockout-list" aria-label="Lockout">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls has to be reachable by keys. */}
      <ol ref={list} tabIndex={0} aria-label="Steps of the lockout">
        {steps.map(({ id, name, mark, half }, at) => (
          <li key={id} data-mark={mark} data-half={half} aria-current={mark === 'now' ? 'step' : undefined}>
            <StepMark mark={mark} number={at + 1} />
            <span>{name}</span>
            <span class="for-ears">, {MARK_WORDS[mark]}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** A knot pulled tight for a step that is done, an arrow for the one asked now, a bare number for those ahead. */
function StepMark({
  mark,
  number,
}: {
  readonly mark: ListedStep['mark'];
  readonly number: number;
}): JSX.Element {
  if (mark === 'ahead') return <span class="step-number">{number}</span>;
  return (
    <svg class="step-mark" viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      {mark === 'done' ? (
        <path d="M4 17 13 26 28 6" fill="none" stroke="currentColor" stroke-width="6" />
      ) : (
        <path d="M4 11H16V3L30 16 16 29V21H4Z" fill="currentColor" />
      )}
    </svg>
  );
}
