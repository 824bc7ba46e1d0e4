import type { JSX } from 'preact';

/** The app's mark: a strand with one knot drawn tight in it. */
export function KnotMark(): JSX.Element {
  const strand =
    'M4 70C30 70 40 62 52 46 66 28 92 30 92 50 92 68 68 72 56 56 44 40 24 34 24 50 24 62 42 64 56 50 68 38 90 34 116 34';
  return (
    <svg class="knot-mark" viewBox="0 0 120 100" aria-hidden="true" focusable="false">
      <path d={strand} fill="none" stroke="var(--twine-edge)" stroke-width="14" stroke-linecap="round" />
      <path d={strand} fill="none" stroke="var(--twine)" stroke-width="8" stroke-linecap="round" />
    </svg>
  );
}
