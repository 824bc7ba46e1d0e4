import { describe, expect, it } from 'vitest';
import { MEANING_IDS, taughtForm, UNIVERSAL_MEANINGS, VOID_MEANINGS } from '../../../grammar/lexicon.ts';
import { isPhraseOf } from '../../../src/screens/hearing-check.ts';
import { readinessText } from '../../../src/screens/readiness.tsx';
import { asSentence } from '../../../src/screens/sentence.ts';
import { FIXED_WORDS, MORE_WORDS } from '../../../src/screens/universal-words.ts';
import { verdict } from '../../../src/screens/welcome-screen.tsx';

describe('the words on buttons', () => {
  it('begin with a capital and know that "i" is "I"', () => {
    expect(asSentence("i can't see it from here")).toBe("I can't see it from here");
    expect(asSentence("everyone is told and i'm in charge")).toBe("Everyone is told and I'm in charge");
    for (const meaning of MEANING_IDS) {
      const label = asSentence(taughtForm(meaning));
      expect(label).not.toMatch(/\bi\b/);
      expect(label).not.toMatch(/^[a-z]/);
    }
  });

  /** Yes, no, done and carry on are buttons of the questions that ask for them; quiet is the switch beside the strand. */
  const ELSEWHERE = ['stop', 'yes', 'no', 'thatIsDone', 'carryOn', 'beQuiet'];

  it('leave no word that always works without a button', () => {
    const buttons = [...FIXED_WORDS, ...MORE_WORDS].map(({ meaning }) => meaning);
    expect([...buttons, ...ELSEWHERE].sort()).toEqual(
      [...new Set([...UNIVERSAL_MEANINGS, ...ELSEWHERE])].sort(),
    );
  });

  it('hold nothing that takes a lockout away but "stop" and the void phrases', () => {
    const buttons = [...FIXED_WORDS, ...MORE_WORDS].map(({ meaning }) => meaning);
    for (const meaning of VOID_MEANINGS) expect(buttons).not.toContain(meaning);
  });
});

describe('the hearing check', () => {
  it('takes every way of saying a phrase, as the recogniser writes it, and nothing else', () => {
    expect(isPhraseOf('stop_everything_now', 'stop')).toBe(true);
    expect(isPhraseOf('stop', 'stop')).toBe(true);
    expect(isPhraseOf("that's_right", 'stop')).toBe(false);
    expect(isPhraseOf('[unk]', 'stop')).toBe(false);
    expect(isPhraseOf('stop_everything_now [unk]', 'stop')).toBe(false);
  });

  it('says how well it hears', () => {
    expect(verdict([true, true, true])).toBe('I hear you well.');
    expect(verdict([true, false, true])).toContain('2 of 3');
    expect(verdict([false, false, false])).toContain('buttons');
  });
});

describe('readiness for the field', () => {
  it('claims to be ready only when app and voice are both on the tablet', () => {
    const apps = [
      { kind: 'installing' },
      { kind: 'ready' },
      { kind: 'cannot', sentence: 'No.' },
      { kind: 'newer', use() {} },
    ] as const;
    const voices = [
      { kind: 'coming', share: 0.999 },
      { kind: 'here' },
      { kind: 'cannot', sentence: 'No voice.' },
    ] as const;
    const ready = apps.flatMap((app) =>
      voices
        .filter((voice) => readinessText(app, voice).startsWith('Ready'))
        .map((voice) => [app.kind, voice.kind]),
    );
    expect(ready).toEqual([['ready', 'here']]);
    expect(readinessText(apps[1], voices[0])).toContain('99 %');
  });
});
