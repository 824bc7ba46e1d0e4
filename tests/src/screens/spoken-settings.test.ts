import { describe, expect, it } from 'vitest';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { MEANING_IDS, SETTING_MEANINGS } from '../../../grammar/lexicon.ts';
import { USUAL } from '../../../src/screens/preferences.ts';
import { PACES, SETTING_LINES, settingAsked, VOLUMES } from '../../../src/screens/spoken-settings.ts';

const OWN = ['Plain', 'Other'];

describe('settings asked for in a job', () => {
  it('are understood in every state, and nothing else is a setting', () => {
    for (const meaning of SETTING_MEANINGS) expect(activeMeanings({ meanings: [] })).toContain(meaning);
    const taken = MEANING_IDS.filter((meaning) => settingAsked(meaning, USUAL, OWN));
    expect(taken).toEqual(SETTING_MEANINGS);
  });

  it('go through every loudness, and say so at either end', () => {
    const heard = [...VOLUMES]
      .reverse()
      .map((volume) => settingAsked('setting.softer', { ...USUAL, volume }, OWN));
    expect(heard.map((asked) => asked?.preferences.volume)).toEqual([75, 50, 25, 25]);
    expect(heard.at(-1)?.say).toEqual([SETTING_LINES.softest]);
    expect(settingAsked('setting.louder', { ...USUAL, volume: 25 }, OWN)?.preferences.volume).toBe(50);
    expect(settingAsked('setting.louder', USUAL, OWN)).toEqual({
      preferences: USUAL,
      say: [SETTING_LINES.loudest],
    });
  });

  it('change the light and leave everything else as it was', () => {
    const mine = { ...USUAL, theme: 'auto', units: 'metric', textSize: 150 } as const;
    expect(settingAsked('setting.dark', mine, OWN)?.preferences).toEqual({ ...mine, theme: 'shed' });
    expect(settingAsked('setting.bright', mine, OWN)?.preferences).toEqual({ ...mine, theme: 'day' });
  });

  it('go through every pace, and say so at either end', () => {
    const faster = PACES.map((pace) => settingAsked('setting.faster', { ...USUAL, pace }, OWN));
    expect(faster.map((asked) => asked?.preferences.pace)).toEqual(['usual', 'faster', 'faster']);
    expect(faster.at(-1)?.say).toEqual([SETTING_LINES.fastest]);
    const slower = PACES.map((pace) => settingAsked('setting.slower', { ...USUAL, pace }, OWN));
    expect(slower.map((asked) => asked?.preferences.pace)).toEqual(['slower', 'slower', 'usual']);
    expect(slower[0]?.say).toEqual([SETTING_LINES.slowest]);
  });

  it('take the voices of the tablet in turn, and go back to the recorded one', () => {
    const first = settingAsked('setting.ownVoice', USUAL, OWN)?.preferences ?? USUAL;
    const second = settingAsked('setting.ownVoice', first, OWN)?.preferences ?? USUAL;
    expect([first.ownVoice, second.ownVoice]).toEqual(OWN);
    expect(settingAsked('setting.ownVoice', second, OWN)?.preferences.ownVoice).toBe(OWN[0]);
    expect(settingAsked('setting.recordedVoice', second, OWN)?.preferences).toEqual(USUAL);
    expect(settingAsked('setting.ownVoice', USUAL, [])).toEqual({
      preferences: USUAL,
      say: [SETTING_LINES.noOwnVoice],
    });
  });

  it('change units and names, and take them back', () => {
    const metric = settingAsked('setting.metric', USUAL, OWN)?.preferences ?? USUAL;
    expect(metric).toEqual({ ...USUAL, units: 'metric' });
    expect(settingAsked('setting.customary', metric, OWN)?.preferences).toEqual(USUAL);
    const near = settingAsked('setting.nearAndOff', USUAL, OWN)?.preferences ?? USUAL;
    expect(near).toEqual({ ...USUAL, sides: 'nearAndOff' });
    expect(settingAsked('setting.leftAndRight', near, OWN)?.preferences).toEqual(USUAL);
  });
});
