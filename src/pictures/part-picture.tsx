import type { JSX } from 'preact';
import { PARTS, type PartId } from '../../flows/knotter.ts';
import { BalerPicture } from './baler-picture.tsx';
import { isKnotterPart, KnotterPicture } from './knotter-picture.tsx';
import './part-picture.css';
import { StringPicture } from './string-picture.tsx';
import { WHERE_TO_LOOK } from './where-to-look.ts';

/** Where to look: the drawing with the part lit, its name, and where to look from. */
export function PartPicture({ part }: { readonly part: PartId }): JSX.Element {
  return (
    <figure class="part-picture">
      <div class="part-drawing">
        {isKnotterPart(part) ? (
          <KnotterPicture lit={part} />
        ) : part === 'failedString' ? (
          <StringPicture />
        ) : (
          <BalerPicture lit={part} />
        )}
      </div>
      <figcaption>
        <b>{PARTS[part].replace(/^./, (first) => first.toUpperCase())}</b>
        <span>Look {WHERE_TO_LOOK[part].from}.</span>
      </figcaption>
    </figure>
  );
}
