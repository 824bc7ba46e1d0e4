import { describe, expect, it } from 'vitest';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { MEANING_IDS, SETTING_MEANINGS } from '../../../grammar/lexicon.ts';
import { USUAL } from '../../../src/screens/preferences.ts';
import { SETTING_LINES, settingAsked, VOLUMES } from '../../../src/screens/spoken-settings.ts';

describe('settings asked for in a job', () => {
  it('are understood in every state, and nothing else is a setting', () => {
    for (const meaning of SETTING_MEANINGS) expect(activeMeanings({ meanings: [] })).toContain(meaning);
    const taken = MEANING_IDS.filter((meaning) => settingAsked(meaning, USUAL));
    expect(taken).toEqual(SETTING_MEANINGS);
  });

  it('go through every loudness, and say so at either end', () => {
    const heard = [...VOLUMES]
      .reverse()
      .map((volume) => settingAsked('setting.softer', { ...USUAL, volume }));
    expect(heard.map((asked) => asked?.preferences.volume)).toEqual([75, 50, 25, 25]);
    expect(heard.at(-1)?.say).toEqual([SETTING_LINES.softest]);
    expect(settingAsked('setting.louder', { ...USUAL, volume: 25 })?.preferences.volume).toBe(50);
    expect(settingAsked('setting.louder', USUAL)).toEqual({
      preferences: USUAL,
      say: [SETTING_LINES.loudest],
    });
  });

  it('change the light and leave everything else as it was', () => {
    const mine = { ...USUAL, theme: 'auto', units: 'metric', textSize: 150 } as const;
    expect(settingAsked('setting.dark', mine)?.preferences).toEqual({ ...mine, theme: 'shed' });
    expect(settingAsked('setting.bright', mine)?.preferences).toEqual({ ...mine, theme: 'day' });
  });
});
