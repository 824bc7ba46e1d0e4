import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { builtModel } from '../../audio/command-model/built.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import type { FieldModelCourse, FieldModelOffer } from '../offline/field-model.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { asSentence } from './sentence.ts';

interface FieldModelSettingProps {
  readonly offer: FieldModelOffer;
  readonly chosen: PackedFieldModel | undefined;
  /** Voice and bundled model are still on their way onto the tablet: one thing after the other. */
  readonly isVoiceComing: boolean;
}

/** Which speech model listens, and the way to the larger one where the app was installed with it. */
export function FieldModelSetting({ offer, chosen, isVoiceComing }: FieldModelSettingProps): JSX.Element {
  useEffect(() => void offer.look(), [offer]);
  const field = offer.offered.value ?? chosen;
  const isInUse = chosen !== undefined && chosen.sha256 === field?.sha256;
  return (
    <section>
      {field && !isVoiceComing ? (
        <ChoiceGroup
          legend="Speech model"
          options={[
            { value: 'bundled', label: `Bundled: ${megabytes(builtModel.bytes)}` },
            { value: 'field', label: `Field model: richer vocabulary, ${megabytes(field.bytes)}` },
          ]}
          chosen={isInUse ? 'field' : 'bundled'}
          onChoose={(which) => void (which === 'field' ? offer.bring(field) : offer.drop())}
        />
      ) : (
        <h2>Speech model</h2>
      )}
      <p role="status">{fieldModelText(offer.course.value, chosen)}</p>
      {chosen && chosen.taughtGaps.length > 0 ? <TaughtGaps gaps={chosen.taughtGaps} /> : null}
    </section>
  );
}

/** What the prompts teach and this model does not hear. */
function TaughtGaps({ gaps }: { readonly gaps: PackedFieldModel['taughtGaps'] }): JSX.Element {
  return (
    <details>
      <summary>It lacks words for {gaps.length} answers</summary>
      <ul>
        {gaps.map(({ taught, instead }) => (
          <li key={taught}>
            {asSentence(taught)}: {instead ? <>say “{instead}”</> : 'by its button only'}.
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Which model is in use, and what is being done about the other. */
export function fieldModelText(course: FieldModelCourse, chosen: PackedFieldModel | undefined): string {
  switch (course.kind) {
    case 'coming':
      return `Fetching the field model: ${Math.floor(100 * course.share)} %.`;
    case 'trying':
      return 'Trying the field model on this tablet.';
    case 'failed':
      return course.sentence;
    case 'resting':
      return chosen ? 'The field model listens.' : 'The bundled speech model listens.';
  }
}

function megabytes(bytes: number): string {
  return `${Math.max(1, Math.round(bytes / 1e6))} MB`;
}
