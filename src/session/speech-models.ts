import { bundledModel, type SpeechModel } from '../../audio/ears/speech-model.ts';
import {
  FIELD_MODEL_FOLDER,
  fieldSpeechModel,
  type PackedFieldModel,
} from '../../audio/field-model/packed-field-model.ts';

/**
 * The speech models to listen with, the most wanted first. The bundled one is always among them: it takes over where the
 * other does not load.
 * @param page address that the folders lie beside
 * @param field the field model, where somebody chose it on this tablet
 */
export function speechModels(
  page: string,
  field: PackedFieldModel | undefined,
): readonly [SpeechModel, ...SpeechModel[]] {
  const bundled = bundledModel(new URL('model/', page).href);
  return field ? [fieldSpeechModel(field, new URL(FIELD_MODEL_FOLDER, page).href), bundled] : [bundled];
}
