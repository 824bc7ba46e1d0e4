import { type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Preferences } from './preferences.ts';

/** The loudness there is, in percent, from the softest. */
export const VOLUMES = [25, 50, 75, 100] as const satisfies readonly Preferences['volume'][];

/** Said where a wish cannot be met. */
export const SETTING_LINES = {
  loudest: 'That is as loud as I can speak.',
  softest: 'That is as soft as I speak.',
} as const;

export interface SettingAsked {
  readonly preferences: Preferences;
  readonly say: Say;
}

/** What is asked of the tablet in the middle of a job, or undefined where the meaning is no setting. */
export function settingAsked(meaning: MeaningId, now: Preferences): SettingAsked | undefined {
  const say: Say = [ruleOf(meaning).readBack];
  switch (meaning) {
    case 'setting.louder': {
      const louder = VOLUMES.find((volume) => volume > now.volume);
      return louder
        ? { preferences: { ...now, volume: louder }, say }
        : { preferences: now, say: [SETTING_LINES.loudest] };
    }
    case 'setting.softer': {
      const softer = VOLUMES.findLast((volume) => volume < now.volume);
      return softer
        ? { preferences: { ...now, volume: softer }, say }
        : { preferences: now, say: [SETTING_LINES.softest] };
    }
    case 'setting.dark':
      return { preferences: { ...now, theme: 'shed' }, say };
    case 'setting.bright':
      return { preferences: { ...now, theme: 'day' }, say };
    default:
      return undefined;
  }
}
