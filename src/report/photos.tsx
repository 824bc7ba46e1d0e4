import type { JSX } from 'preact';
import type { PhotoOf } from '../records/photo.ts';
import type { PhotoLine } from './card.ts';
import './photos.css';
import { momentText } from './words.ts';

export const PHOTO_NAMES: Readonly<Record<PhotoOf, string>> = {
  failedString: 'Failed string',
  oldEnd: 'Its old end, from the top of the bale',
  newEnd: 'Its new end, from the front of the bale',
  machine: 'Machine',
};

interface PhotosProps {
  readonly photos: readonly PhotoLine[];
  readonly urls: ReadonlyMap<string, string>;
}

/** Photos with what they show; one that is not on this tablet says so. */
export function Photos({ photos, urls }: PhotosProps): JSX.Element {
  return (
    <div class="photos">
      {photos.map((photo) => {
        const url = urls.get(photo.photoId);
        return (
          <figure key={photo.photoId}>
            {url ? <img src={url} alt={photoCaption(photo)} /> : <p>This photo is not on this tablet.</p>}
            <figcaption>
              {photoCaption(photo)}, {momentText(photo.atMs)}
            </figcaption>
          </figure>
        );
      })}
    </div>
  );
}

/** What a photo shows, and of which knotter. */
export function photoCaption({ of, side }: Pick<PhotoLine, 'of' | 'side'>): string {
  return side ? `${PHOTO_NAMES[of]}, ${side} knotter` : PHOTO_NAMES[of];
}
