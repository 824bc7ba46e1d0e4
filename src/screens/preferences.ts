import { effect, type Signal, signal } from '@preact/signals';
import * as v from 'valibot';
import { packedFieldModelSchema } from '../../audio/field-model/packed-field-model.ts';
import { HEARING_CHOICES } from '../../flows/hearing-policy.ts';

const PREFERENCES = v.object({
  /** `auto` follows the tablet. */
  theme: v.optional(v.picklist(['day', 'shed', 'auto']), 'day'),
  /** Percent of the usual size. */
  textSize: v.optional(v.picklist([100, 125, 150, 200]), 100),
  /** In which units numbers are asked for, taken when the unit is left out, and said. */
  units: v.optional(v.picklist(['inch', 'metric']), 'inch'),
  /** What the two knotters are called. */
  sides: v.optional(v.picklist(['leftAndRight', 'nearAndOff']), 'leftAndRight'),
  /** Name of the tablet's own voice to speak with; missing for the recorded one. */
  ownVoice: v.optional(v.string()),
  /** Loudness of the mouth, percent. */
  volume: v.optional(v.picklist([25, 50, 75, 100]), 100),
  /** How fast the mouth speaks. */
  pace: v.optional(v.picklist(['slower', 'usual', 'faster']), 'usual'),
  /** The field model, once it is on this tablet and chosen; missing for the bundled speech model. */
  fieldModel: v.fallback(v.optional(packedFieldModelSchema), undefined),
  /** How spoken answers are taken. */
  hearing: v.optional(v.picklist(HEARING_CHOICES), 'automatic'),
  /** Whether the first run was gone through. */
  wasWelcomed: v.optional(v.boolean(), false),
});

/** How somebody likes the app on this tablet. None of it belongs to a job. */
export type Preferences = v.InferOutput<typeof PREFERENCES>;

export const USUAL: Preferences = v.parse(PREFERENCES, {});

/** Where in the browser's storage they are kept. */
export const PREFERENCES_PLACE = 'knotwright.preferences';

/** What was kept, with the usual in the place of anything missing; the usual altogether where it cannot be read. */
export function readPreferences(kept: string | null): Preferences {
  if (kept === null) return USUAL;
  try {
    const parsed = v.safeParse(PREFERENCES, JSON.parse(kept));
    return parsed.success ? parsed.output : USUAL;
  } catch {
    return USUAL;
  }
}

/** The preferences of this tablet: a change is seen at once and kept where the browser keeps anything at all. */
export function keepPreferences(storage: Pick<Storage, 'getItem' | 'setItem'>): Signal<Preferences> {
  const preferences = signal(readPreferences(readSafely(storage)));
  effect(() => {
    const text = JSON.stringify(preferences.value);
    try {
      storage.setItem(PREFERENCES_PLACE, text);
    } catch {
      // A tablet that keeps nothing still shows what was chosen until the app closes.
    }
  });
  return preferences;
}

function readSafely(storage: Pick<Storage, 'getItem'>): string | null {
  try {
    return storage.getItem(PREFERENCES_PLACE);
  } catch {
    return null;
  }
}

/**
 * Dresses the page in what was chosen, now and after every change.
 * @param isDark what the tablet itself is set to, for whoever follows it
 */
export function wearPreferences(
  preferences: Signal<Preferences>,
  page: HTMLElement,
  isDark: MediaQueryList,
): () => void {
  const tabletIsDark = signal(isDark.matches);
  isDark.addEventListener('change', ({ matches }) => {
    tabletIsDark.value = matches;
  });
  return effect(() => {
    const { theme, textSize } = preferences.value;
    const followed = tabletIsDark.value ? 'shed' : 'day';
    page.dataset.theme = theme === 'auto' ? followed : theme;
    page.style.fontSize = textSize === 100 ? '' : `${textSize}%`;
  });
}
