import { describe, expect, it } from 'vitest';
import { HEARING_CHOICES } from '../../../flows/hearing-policy.ts';
import { activeMeanings } from '../../../grammar/expecting.ts';
import { HEARING_MEANINGS, MEANING_IDS } from '../../../grammar/lexicon.ts';
import { readPreferences, USUAL } from '../../../src/screens/preferences.ts';
import { hearingAsked } from '../../../src/screens/spoken-hearing.ts';

describe('how spoken answers are taken', () => {
  it('is chosen by a phrase each, in every state where it is quiet, and by nothing else', () => {
    for (const meaning of HEARING_MEANINGS) expect(activeMeanings({ meanings: [] })).toContain(meaning);
    expect(MEANING_IDS.filter((meaning) => hearingAsked(meaning, USUAL))).toEqual(HEARING_MEANINGS);
    const chosen = HEARING_MEANINGS.map((meaning) => hearingAsked(meaning, USUAL)?.preferences.hearing);
    expect([...chosen].sort()).toEqual([...HEARING_CHOICES].sort());
  });

  it('changes nothing else, says what was chosen, and is kept', () => {
    const mine = { ...USUAL, theme: 'shed', volume: 50 } as const;
    for (const meaning of HEARING_MEANINGS) {
      const asked = hearingAsked(meaning, mine);
      expect({ ...asked?.preferences, hearing: mine.hearing }).toEqual(mine);
      expect(asked?.say.join('')).not.toBe('');
      expect(readPreferences(JSON.stringify(asked?.preferences))).toEqual(asked?.preferences);
    }
  });

  it('goes by the noise where nobody chose, or where what was kept cannot be read', () => {
    expect(USUAL.hearing).toBe('automatic');
    expect(readPreferences('{"hearing":"trustMe"}').hearing).toBe('automatic');
  });
});
