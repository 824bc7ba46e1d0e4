import { type ReadonlySignal, type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { HEARING_CHOICES } from '../../flows/hearing-policy.ts';
import { HEARING_GRADES } from '../../grammar/hearing-grade.ts';
import type { FieldModelOffer } from '../offline/field-model.ts';
import type { VoiceAtHand } from '../offline/voice-at-hand.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { FieldModelSetting } from './field-model-setting.tsx';
import { CHOICE_WORDS, GRADE_MEANS } from './hearing-words.ts';
import { Page } from './page.tsx';
import type { Preferences } from './preferences.ts';
import { hashOf } from './route.ts';
import { asSentence } from './sentence.ts';
import { PACES, VOLUMES } from './spoken-settings.ts';

interface SettingsScreenProps {
  readonly preferences: Signal<Preferences>;
  /** Names of the voices the tablet itself has; none of them needs a network. */
  readonly ownVoices: readonly string[];
  readonly fieldModel: FieldModelOffer;
  readonly voiceAtHand: ReadonlySignal<VoiceAtHand>;
}

const PACE_LABELS = { slower: 'Slower', usual: 'Usual', faster: 'Faster' } as const;

const STORAGE_WORDS = {
  asking: 'Asking the tablet.',
  safe: 'Records stay until somebody deletes them.',
  mayGo:
    'The tablet may clear the records when it runs full. Save them to a file now and then, under Records.',
} as const;

/** How the app looks and sounds on this tablet. Every change holds at once. */
export function SettingsScreen({
  preferences,
  ownVoices,
  fieldModel,
  voiceAtHand,
}: SettingsScreenProps): JSX.Element {
  const now = preferences.value;
  const storage = useSignal<keyof typeof STORAGE_WORDS>('asking');
  useEffect(() => {
    void Promise.resolve(navigator.storage?.persisted?.() ?? false).then((isSafe) => {
      storage.value = isSafe ? 'safe' : 'mayGo';
    });
  }, []);
  const change = (part: Partial<Preferences>) => {
    preferences.value = { ...now, ...part };
  };
  return (
    <Page title="Settings">
      <div class="page-form">
        <ChoiceGroup
          legend="Light"
          options={[
            { value: 'day', label: 'Day: black on white' },
            { value: 'shed', label: 'Shed: white on black' },
            { value: 'auto', label: 'As the tablet is set' },
          ]}
          chosen={now.theme}
          onChoose={(theme) => change({ theme })}
        />
        <ChoiceGroup
          legend="Size of the text"
          options={([100, 125, 150, 200] as const).map((size) => ({ value: size, label: `${size} %` }))}
          chosen={now.textSize}
          onChoose={(textSize) => change({ textSize })}
        />
        <ChoiceGroup
          legend="Units"
          options={[
            { value: 'inch', label: 'Inches and pounds' },
            { value: 'metric', label: 'Millimetres and newtons' },
          ]}
          chosen={now.units}
          onChoose={(units) => change({ units })}
        />
        <ChoiceGroup
          legend="Voice"
          options={[
            { value: undefined, label: 'Recorded voice' },
            ...ownVoices.map((name) => ({ value: name, label: name })),
          ]}
          chosen={now.ownVoice}
          onChoose={(ownVoice) => {
            const { ownVoice: _, ...rest } = now;
            preferences.value = ownVoice === undefined ? rest : { ...rest, ownVoice };
          }}
        />
        {ownVoices.length === 0 ? (
          <p>This tablet has no voice of its own that works without a network.</p>
        ) : null}
        <ChoiceGroup
          legend="Loudness of the voice"
          options={VOLUMES.map((volume) => ({ value: volume, label: `${volume} %` }))}
          chosen={now.volume}
          onChoose={(volume) => change({ volume })}
        />
        <ChoiceGroup
          legend="Pace of the voice"
          options={PACES.map((pace) => ({ value: pace, label: PACE_LABELS[pace] }))}
          chosen={now.pace}
          onChoose={(pace) => change({ pace })}
        />
        <FieldModelSetting
          offer={fieldModel}
          chosen={now.fieldModel}
          isVoiceComing={voiceAtHand.value.kind === 'coming'}
        />
        <section>
          <h2>Noise</h2>
          <ChoiceGroup
            legend="How spoken answers are taken"
            options={HEARING_CHOICES.map((choice) => ({ value: choice, label: CHOICE_WORDS[choice] }))}
            chosen={now.hearing}
            onChoose={(hearing) => change({ hearing })}
          />
          <p>
            The app says how well it hears, and what is different then. A step of the lockout is never taken
            from a voice in noise, and stop is always listened for. This cannot be switched off.
          </p>
          <ul>
            {[...HEARING_GRADES].reverse().map((grade) => (
              <li key={grade}>
                <b>{asSentence(grade)}</b>: {GRADE_MEANS[grade]}.
              </li>
            ))}
          </ul>
        </section>
        <ChoiceGroup
          legend="What the two knotters are called"
          options={[
            { value: 'leftAndRight', label: 'Left and right' },
            { value: 'nearAndOff', label: 'Near side and off side' },
          ]}
          chosen={now.sides}
          onChoose={(sides) => change({ sides })}
        />
        <p>Always as seen from behind the baler, facing the tractor: the near side is the left one.</p>
        <section>
          <h2>Records</h2>
          <p>{STORAGE_WORDS[storage.value]}</p>
        </section>
        <nav class="choice-row" aria-label="More settings">
          <a class="link-button" href={hashOf({ page: 'learnt' })}>
            Learnt here
          </a>
          <a class="link-button" href={hashOf({ page: 'machines' })}>
            Balers
          </a>
          <a class="link-button" href={hashOf({ page: 'welcome' })}>
            Check microphone and voice
          </a>
        </nav>
      </div>
    </Page>
  );
}
