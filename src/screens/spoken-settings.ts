import { type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Preferences } from './preferences.ts';

/** The loudness there is, in percent, from the softest. */
export const VOLUMES = [25, 50, 75, 100] as const satisfies readonly Preferences['volume'][];

/** The paces there are, from the slowest. */
export const PACES = ['slower', 'usual', 'faster'] as const satisfies readonly Preferences['pace'][];

/** Said where a wish cannot be met. */
export const SETTING_LINES = {
  loudest: 'That is as loud as I can speak.',
  softest: 'That is as soft as I speak.',
  slowest: 'That is as slowly as I speak.',
  fastest: 'That is as fast as I speak.',
  noOwnVoice: 'This tablet has no voice of its own that works here. I stay as I am.',
} as const;

export interface SettingAsked {
  readonly preferences: Preferences;
  readonly say: Say;
}

/**
 * What is asked of the tablet in the middle of a job, or undefined where the meaning is no setting.
 * @param ownVoices names of the voices the tablet itself has
 */
export function settingAsked(
  meaning: MeaningId,
  now: Preferences,
  ownVoices: readonly string[],
): SettingAsked | undefined {
  const changed = (part: Partial<Preferences>): SettingAsked => ({
    preferences: { ...now, ...part },
    say: [ruleOf(meaning).readBack],
  });
  const refused = (line: string): SettingAsked => ({ preferences: now, say: [line] });
  switch (meaning) {
    case 'setting.louder': {
      const volume = VOLUMES.find((each) => each > now.volume);
      return volume ? changed({ volume }) : refused(SETTING_LINES.loudest);
    }
    case 'setting.softer': {
      const volume = VOLUMES.findLast((each) => each < now.volume);
      return volume ? changed({ volume }) : refused(SETTING_LINES.softest);
    }
    case 'setting.slower': {
      const pace = PACES[PACES.indexOf(now.pace) - 1];
      return pace ? changed({ pace }) : refused(SETTING_LINES.slowest);
    }
    case 'setting.faster': {
      const pace = PACES[PACES.indexOf(now.pace) + 1];
      return pace ? changed({ pace }) : refused(SETTING_LINES.fastest);
    }
    case 'setting.ownVoice': {
      // Asked for once more, it is the next of them.
      const ownVoice = ownVoices[ownVoices.indexOf(now.ownVoice ?? '') + 1] ?? ownVoices[0];
      return ownVoice ? changed({ ownVoice }) : refused(SETTING_LINES.noOwnVoice);
    }
    case 'setting.recordedVoice': {
      const { ownVoice: _, ...rest } = now;
      return { preferences: rest, say: [ruleOf(meaning).readBack] };
    }
    case 'setting.dark':
      return changed({ theme: 'shed' });
    case 'setting.bright':
      return changed({ theme: 'day' });
    case 'setting.metric':
      return changed({ units: 'metric' });
    case 'setting.customary':
      return changed({ units: 'inch' });
    case 'setting.nearAndOff':
      return changed({ sides: 'nearAndOff' });
    case 'setting.leftAndRight':
      return changed({ sides: 'leftAndRight' });
    default:
      return undefined;
  }
}
