import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Side } from '../../grammar/sides.ts';
import type { PhotoOf, PhotoRow } from '../records/photo.ts';
import { shrinkPhoto } from '../records/shrink-photo.ts';
import { PHOTO_NAMES, photoCaption } from '../report/photos.tsx';
import { ChoiceGroup } from './choice-group.tsx';
import './photo-taker.css';

/** Attaches a photo to the job. @returns nothing where it is kept, else one sentence that says why not */
export type KeepPhoto = (
  about: { readonly of: PhotoOf; readonly side?: Side },
  photo: Omit<PhotoRow, 'photoId'>,
) => Promise<string | undefined>;

interface PhotoTakerProps {
  readonly keep: KeepPhoto;
  /** The side the job is about, chosen before anybody chooses. */
  readonly side?: Side | undefined;
}

const SIDES = [
  { value: 'left', label: 'Left knotter' },
  { value: 'right', label: 'Right knotter' },
  { value: 'neither', label: 'No side' },
] as const;

const KINDS = Object.keys(PHOTO_NAMES) as readonly PhotoOf[];

/** Takes a photo with the tablet's camera and attaches it to the job, saying what it shows. */
export function PhotoTaker({ keep, side }: PhotoTakerProps): JSX.Element {
  const said = useSignal('');
  const chosen = useSignal<Side | 'neither'>(side ?? 'neither');
  const take = async (of: PhotoOf, input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (!file) return;
    const about = chosen.value === 'neither' ? { of } : { of, side: chosen.value };
    said.value = 'Keeping the photo.';
    try {
      const trouble = await keep(about, await shrinkPhoto(file));
      said.value = trouble ?? `Kept: ${photoCaption(about)}.`;
    } catch (error) {
      said.value = error instanceof Error ? error.message : String(error);
    }
    // The same file chosen again is a new choice.
    input.value = '';
  };
  return (
    <section class="photo-taker no-print" aria-label="Take a photo">
      <ChoiceGroup
        legend="Which knotter it shows, seen from behind"
        options={SIDES}
        chosen={chosen.value}
        onChoose={(value) => {
          chosen.value = value;
        }}
      />
      <div class="choice-row">
        {KINDS.map((of) => (
          <label key={of} class="photo-button">
            Photo: {PHOTO_NAMES[of]}
            <input
              type="file"
              accept="image/*"
              capture="environment"
              onChange={(event) => void take(of, event.currentTarget)}
            />
          </label>
        ))}
      </div>
      <p role="status">{said.value}</p>
    </section>
  );
}
