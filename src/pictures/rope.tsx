import type { JSX } from 'preact';

/** A length of twine along a path. */
export function Rope({ path }: { readonly path: string }): JSX.Element {
  return (
    <>
      <path class="rope" d={path} />
      <path class="rope-lay" d={path} />
    </>
  );
}
