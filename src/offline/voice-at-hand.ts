import { type ReadonlySignal, signal } from '@preact/signals';
import { describeFailure } from '../../audio/ears/failures.ts';
import { storeModel } from '../../audio/ears/model-file.ts';
import { holdingModels } from '../../audio/ears/model-lock.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import { speechModels } from '../session/speech-models.ts';
import { keepVoicePacks } from './voice-packs.ts';

/** Whether the voice can be heard and understood with no network. */
export type VoiceAtHand =
  /** @property share of all bytes, 0 to 1 */
  | { readonly kind: 'coming'; readonly share: number }
  | { readonly kind: 'here' }
  | { readonly kind: 'cannot'; readonly sentence: string };

const BUSY =
  'The speech model could not be brought here, because another tab is at it. The buttons still work; load the page again later.';

/**
 * Brings the recorded voice and the speech model onto the tablet, checked, so that the first job in a field needs no
 * network. What is here already is not fetched again. Call it while no job is open. Never rejects.
 * @param page address that the folders lie beside
 * @param fieldModel the field model, where it was chosen: it stays, but only its own setting fetches it
 */
export function bringVoice(
  page: string,
  fieldModel: () => PackedFieldModel | undefined,
): ReadonlySignal<VoiceAtHand> {
  const atHand = signal<VoiceAtHand>({ kind: 'coming', share: 0 });
  const got = { voice: 0, model: 0 };
  const bundled = speechModels(page, undefined)[0].archive;
  const wanted = { voice: 0, model: bundled.bytes };
  const tell = () => {
    const all = wanted.voice + wanted.model;
    atHand.value = { kind: 'coming', share: all === 0 ? 0 : (got.voice + got.model) / all };
  };
  const fetchBoth = async () => {
    const voice = await keepVoicePacks(new URL('voice/', page), (gotBytes, wantedBytes) => {
      got.voice = gotBytes;
      wanted.voice = wantedBytes;
      tell();
    });
    const onProgress = (gotBytes: number) => {
      got.model = gotBytes;
      tell();
    };
    const kept = speechModels(page, fieldModel()).map(({ archive }) => archive);
    // A job that is begun meanwhile waits with its recogniser, and then finds the model here.
    const model = await holdingModels(() => storeModel(bundled, onProgress, kept));
    if (!voice.ok) return { kind: 'cannot', sentence: voice.sentence } as const;
    if (!model.ok) return { kind: 'cannot', sentence: describeFailure(model.failure) } as const;
    return { kind: 'here' } as const;
  };
  void fetchBoth()
    .catch(() => ({ kind: 'cannot', sentence: BUSY }) as const)
    .then((outcome) => {
      atHand.value = outcome;
    });
  return atHand;
}
