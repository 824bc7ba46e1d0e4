import { createListener, type Listener } from '../../audio/ears/listener.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import { speechModels } from './speech-models.ts';

/** The ears, loaded only when somebody wants to speak: the recogniser outweighs the rest of the app many times. */
export { ALTERED_SOUND, describeFailure, describePassedOver } from '../../audio/ears/failures.ts';
export { loadRecogniser } from '../../audio/ears/recogniser.ts';
export { canGoOn, graphToken, recogniserList } from '../../grammar/compile.ts';

/** The ears with the chosen field model, if there is one, and else with the model that this build of the app carries. */
export function openEars(field: PackedFieldModel | undefined): Listener {
  return createListener({ models: speechModels(document.baseURI, field) });
}
