import type { HearingChoice } from '../../flows/hearing-policy.ts';
import { type HearingMeaning, type MeaningId, ruleOf } from '../../grammar/lexicon.ts';
import type { Preferences } from './preferences.ts';
import type { SettingAsked } from './spoken-settings.ts';

/** What each phrase chooses. */
const CHOSEN_BY: Readonly<Record<HearingMeaning, HearingChoice>> = {
  'hearing.automatic': 'automatic',
  'hearing.alwaysAskBack': 'alwaysAskBack',
  'hearing.buttonsOnly': 'buttonsOnly',
};

/** How spoken answers are wanted taken, asked for in the middle of a job; undefined where the meaning asks no such thing. */
export function hearingAsked(meaning: MeaningId, now: Preferences): SettingAsked | undefined {
  if (!isHearingMeaning(meaning)) return undefined;
  return { preferences: { ...now, hearing: CHOSEN_BY[meaning] }, say: [ruleOf(meaning).readBack] };
}

function isHearingMeaning(meaning: MeaningId): meaning is HearingMeaning {
  return Object.hasOwn(CHOSEN_BY, meaning);
}
