import { describe, expect, it } from 'vitest';
import { keepPreferences, readPreferences, USUAL } from '../../../src/screens/preferences.ts';

describe('preferences', () => {
  it.each([
    ['nothing kept', null],
    ['no JSON', '{'],
    ['another shape', '[1, 2]'],
    ['a theme that does not exist', '{"theme":"sepia"}'],
    ['a size nobody offered', '{"textSize":1000}'],
  ])('fall back to the usual for %s', (_, kept) => {
    expect(readPreferences(kept)).toEqual(USUAL);
  });

  it('keep what is there and fill in what is missing', () => {
    expect(readPreferences('{"theme":"shed"}')).toEqual({ ...USUAL, theme: 'shed' });
  });

  it('come back as they were left', () => {
    const disk = new Map<string, string>();
    const storage = {
      getItem: (key: string) => disk.get(key) ?? null,
      setItem: (key: string, value: string) => void disk.set(key, value),
    };
    const preferences = keepPreferences(storage);
    preferences.value = { ...preferences.value, theme: 'shed', textSize: 150, ownVoice: 'A voice' };
    expect(keepPreferences(storage).value).toEqual(preferences.value);
  });

  it('hold until the app closes where the browser keeps nothing', () => {
    const refuse = () => {
      throw new DOMException('', 'SecurityError');
    };
    const preferences = keepPreferences({ getItem: refuse, setItem: refuse });
    preferences.value = { ...preferences.value, theme: 'shed' };
    expect(preferences.value.theme).toBe('shed');
  });
});
