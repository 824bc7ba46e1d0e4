import { type ReadonlySignal, signal } from '@preact/signals';
import { forgetModel } from '../../audio/ears/model-file.ts';
import {
  FIELD_MODEL_FOLDER,
  FIELD_MODEL_INDEX,
  type PackedFieldModel,
  readFieldModelIndex,
} from '../../audio/field-model/packed-field-model.ts';
import { speechModels } from '../session/speech-models.ts';

/** How far the field model is on its way onto this tablet. */
export type FieldModelCourse =
  | { readonly kind: 'resting' }
  /** @property share of its bytes, 0 to 1 */
  | { readonly kind: 'coming'; readonly share: number }
  /** It is here whole; whether this tablet can run it shows when it is loaded. */
  | { readonly kind: 'trying' }
  /** One sentence that says what is wrong and what listens instead. */
  | { readonly kind: 'failed'; readonly sentence: string };

/** Where the choice is kept. */
export interface FieldModelChoice {
  chosen(): PackedFieldModel | undefined;
  choose(field: PackedFieldModel | undefined): void;
}

/** The field model as somebody between jobs can have it. */
export interface FieldModelOffer {
  /** What the place that the app was installed from offers; undefined where it offers none. */
  readonly offered: ReadonlySignal<PackedFieldModel | undefined>;
  readonly course: ReadonlySignal<FieldModelCourse>;
  /** Asks whether there is one. Never rejects. */
  look(): Promise<void>;
  /** Fetches it, checked byte for byte, loads it once for proof, and chooses it if that went well. Never rejects. */
  bring(field: PackedFieldModel): Promise<void>;
  /** Goes back to the bundled model and frees the room. Never rejects. */
  drop(): Promise<void>;
}

/** Call what it gives only while no recogniser lives on this page. @param page address that the folders lie beside */
export function offerFieldModel(page: string, choice: FieldModelChoice): FieldModelOffer {
  const offered = signal<PackedFieldModel | undefined>(undefined);
  const course = signal<FieldModelCourse>({ kind: 'resting' });
  const forget = (field: PackedFieldModel) => forgetModel(speechModels(page, field)[0].archive);

  async function tryOut(field: PackedFieldModel): Promise<FieldModelCourse> {
    const hearing = await import('../session/hearing.ts');
    const loaded = await hearing.loadRecogniser({
      models: speechModels(page, field),
      onProgress(gotBytes, wantedBytes) {
        course.value =
          gotBytes < wantedBytes ? { kind: 'coming', share: gotBytes / wantedBytes } : { kind: 'trying' };
      },
      onDeath: () => {},
    });
    if (!loaded.ok) return { kind: 'failed', sentence: hearing.describeFailure(loaded.failure) };
    loaded.recogniser.close();
    return loaded.passedOver
      ? { kind: 'failed', sentence: hearing.describePassedOver(loaded.passedOver) }
      : { kind: 'resting' };
  }

  return {
    offered,
    course,
    async look() {
      try {
        const response = await fetch(new URL(FIELD_MODEL_FOLDER + FIELD_MODEL_INDEX, page));
        offered.value = response.ok ? readFieldModelIndex(await response.json()) : undefined;
      } catch {
        // No network, or a server that answers with a page: nothing is offered, and what is here stays.
        offered.value = undefined;
      }
    },
    async bring(field) {
      if (course.value.kind === 'coming' || course.value.kind === 'trying') return;
      course.value = { kind: 'coming', share: 0 };
      const outcome = await tryOut(field).catch(
        (error: unknown): FieldModelCourse => ({
          kind: 'failed',
          sentence: `The field model cannot be tried: ${error instanceof Error ? error.message : String(error)}.`,
        }),
      );
      if (outcome.kind === 'failed') await forget(field);
      choice.choose(outcome.kind === 'failed' ? undefined : field);
      course.value = outcome;
    },
    async drop() {
      const field = choice.chosen();
      choice.choose(undefined);
      course.value = { kind: 'resting' };
      if (field) await forget(field);
    },
  };
}
