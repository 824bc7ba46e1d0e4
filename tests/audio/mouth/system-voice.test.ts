import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { localVoices, systemVoice } from '../../../audio/mouth/system-voice.ts';
import type { SpeechTrouble } from '../../../audio/mouth/voice.ts';

class FakeUtterance extends EventTarget {
  voice: unknown;
  lang = '';
  rate = 1;
  volume = 1;
  readonly text: string;
  constructor(text: string) {
    super();
    this.text = text;
  }
}

const voiceNamed = (name: string, localService: boolean, lang = 'en-US') =>
  ({ name, localService, lang }) as SpeechSynthesisVoice;

function openVoice(pace = 1) {
  const spoken: FakeUtterance[] = [];
  const troubles: SpeechTrouble[] = [];
  let cancelled = 0;
  const synthesis = {
    speak: (utterance: FakeUtterance) => spoken.push(utterance),
    cancel: () => {
      cancelled++;
    },
  };
  const voice = systemVoice(
    synthesis as unknown as SpeechSynthesis,
    voiceNamed('Plain', true),
    () => 0.5,
    () => pace,
    (trouble) => troubles.push(trouble),
  );
  return { voice, spoken, troubles, cancels: () => cancelled };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('SpeechSynthesisUtterance', FakeUtterance);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('voices of the tablet', () => {
  it('are taken only if they are local and English', () => {
    const voices = [
      voiceNamed('Plain', true),
      voiceNamed('From afar', false),
      voiceNamed('Underscored', true, 'en_GB'),
      voiceNamed('Other', true, 'de-DE'),
      voiceNamed('Not English', true, 'enq'),
    ];
    expect(localVoices({ getVoices: () => voices }).map(({ name }) => name)).toEqual([
      'Plain',
      'Underscored',
    ]);
    expect(() =>
      systemVoice(
        {} as SpeechSynthesis,
        voiceNamed('From afar', false),
        () => 1,
        () => 1,
        () => {},
      ),
    ).toThrow(/does not work offline/);
  });

  it('say the whole Say as one text, at the volume set', async () => {
    const { voice, spoken } = openVoice();
    const { started, finished } = voice.speak(['forty', 'pounds']);
    expect(spoken.map(({ text, volume }) => [text, volume])).toEqual([['forty pounds', 0.5]]);
    spoken[0]?.dispatchEvent(new Event('start'));
    spoken[0]?.dispatchEvent(new Event('end'));
    expect(await started).toBeTypeOf('number');
    expect(await finished).toBe('done');
  });

  it('speak slower and faster by as much as was asked', () => {
    const rates = [0.8, 1, 1.25].map((pace) => {
      const { voice, spoken } = openVoice(pace);
      voice.speak(['forty']);
      return spoken[0]?.rate ?? Number.NaN;
    });
    expect(rates[0]).toBeCloseTo(0.8 * (rates[1] ?? 0), 9);
    expect(rates[2]).toBeCloseTo(1.25 * (rates[1] ?? 0), 9);
  });

  it('are cut by the next thing to say', async () => {
    const { voice, spoken, troubles, cancels } = openVoice();
    const first = voice.speak(['one']);
    voice.speak(['two']);
    expect(await first.finished).toBe('cut');
    expect(cancels()).toBe(1);
    // A browser reports the cancelled utterance as an error afterwards; that is no trouble.
    spoken[0]?.dispatchEvent(Object.assign(new Event('error'), { error: 'interrupted' }));
    expect(troubles).toEqual([]);
  });

  it('report an error, and a start that never comes', async () => {
    const { voice, spoken, troubles } = openVoice();
    const broken = voice.speak(['one']);
    spoken[0]?.dispatchEvent(Object.assign(new Event('error'), { error: 'synthesis-failed' }));
    expect(await broken.finished).toBe('failed');
    const mute = voice.speak(['two']);
    vi.advanceTimersByTime(60_000);
    expect(await mute.finished).toBe('failed');
    expect(await mute.started).toBe('never');
    expect(troubles.map(({ kind }) => kind)).toEqual(['systemVoiceFailed', 'systemVoiceFailed']);
    expect(troubles[1]?.message).toContain('did not begin to speak');
  });
});
