import type { ComponentChildren, JSX } from 'preact';
import './page.css';
import { hashOf } from './route.ts';

interface PageProps {
  readonly title: string;
  readonly children: ComponentChildren;
}

/** A page beside the job: a heading, a way back to the start, and what the page is for. */
export function Page({ title, children }: PageProps): JSX.Element {
  return (
    <main class="page">
      <header class="page-head">
        <a class="page-back" href={hashOf({ page: 'start' })}>
          Back
        </a>
        <h1>{title}</h1>
      </header>
      {children}
    </main>
  );
}
