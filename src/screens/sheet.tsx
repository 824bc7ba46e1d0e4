import type { ComponentChildren, JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import './sheet.css';

interface SheetProps {
  readonly title: string;
  readonly closeLabel: string;
  /** Set where the page has its own way back and needs all the room: the heading is then for ears only. */
  readonly isBare?: boolean;
  readonly children: ComponentChildren;
  onClose(): void;
}

/**
 * A page in the place of question and answers. The safety plate and "stop" stay where they are and stay usable,
 * which is why this is no modal dialog. Escape leaves it.
 */
export function Sheet({ title, closeLabel, isBare = false, children, onClose }: SheetProps): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null);
  // Before the page is drawn, so that no key pressed right then is lost.
  useLayoutEffect(() => {
    heading.current?.focus();
    const leave = (event: KeyboardEvent) => {
      if (event.key === 'Escape') onClose();
    };
    window.addEventListener('keydown', leave);
    return () => window.removeEventListener('keydown', leave);
  }, []);
  return (
    <section class="sheet" aria-label={title} data-bare={isBare}>
      <header class="sheet-head">
        <h1 ref={heading} tabIndex={-1} class={isBare ? 'for-ears' : ''}>
          {title}
        </h1>
        {isBare ? null : (
          <button type="button" class="sheet-close" onClick={onClose}>
            {closeLabel}
          </button>
        )}
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a page that may scroll has to be reachable by keys. */}
      <div class="sheet-body" tabIndex={0}>
        {children}
      </div>
    </section>
  );
}
