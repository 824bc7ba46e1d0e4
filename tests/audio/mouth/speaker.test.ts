import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { packClips } from '../../../audio/mouth/render/clip-packs.ts';
import { speaker } from '../../../audio/mouth/speaker.ts';
import type { SpeechTrouble } from '../../../audio/mouth/voice.ts';
import { FakeContext } from './fake-context.ts';

class FakeUtterance extends EventTarget {
  readonly text: string;
  constructor(text: string) {
    super();
    this.text = text;
  }
}

const LOCAL_VOICE = { name: 'Plain', localService: true, lang: 'en-US' } as SpeechSynthesisVoice;
const RATE_HZ = 16_000;

/** A speaker with one recorded sentence, "Stop.", and a tablet voice that does what the test says. */
function openSpeaker() {
  const { index, files } = packClips([
    { text: 'Stop.', key: '0123456789ab', mp3: Uint8Array.of(1), speechMs: 500 },
  ]);
  const tone = Float32Array.from({ length: RATE_HZ / 2 }, (_, at) => 0.1 * Math.sin(at / 5));
  const context = Object.assign(new FakeContext(), {
    decodeAudioData: async () => ({ getChannelData: () => tone, sampleRate: RATE_HZ }),
  });
  const spoken: FakeUtterance[] = [];
  const troubles: SpeechTrouble[] = [];
  const synthesis = { speak: (utterance: FakeUtterance) => spoken.push(utterance), cancel() {} };
  const readPack = async (file: string) =>
    (files.get(file) ?? new Uint8Array()).slice().buffer as ArrayBuffer;
  const mouth = speaker({
    context: context.asContext(),
    files: { index, readPack },
    synthesis: synthesis as unknown as SpeechSynthesis,
    onTrouble: (trouble) => troubles.push(trouble),
  });
  return { mouth, context, spoken, troubles };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

beforeEach(() => {
  vi.stubGlobal('SpeechSynthesisUtterance', FakeUtterance);
});

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the speaker', () => {
  it('uses the recorded voice until another is chosen, and again when that choice is taken back', async () => {
    const { mouth, context, spoken } = openSpeaker();
    mouth.speak(['Stop.']);
    await settled();
    expect([context.sources.length, spoken.length]).toEqual([1, 0]);
    mouth.useSystemVoice(LOCAL_VOICE);
    mouth.speak(['Stop.']);
    await settled();
    expect([context.sources.length, spoken.length]).toEqual([1, 1]);
    mouth.useSystemVoice(undefined);
    mouth.speak(['Stop.']);
    await settled();
    expect([context.sources.length, spoken.length]).toEqual([2, 1]);
  });

  it('falls silent when the voice is changed', async () => {
    const { mouth } = openSpeaker();
    const utterance = mouth.speak(['Stop.']);
    mouth.useSystemVoice(LOCAL_VOICE);
    expect(await utterance.finished).toBe('cut');
  });

  it('reports a tablet voice that fails, and says the same with the recorded one', async () => {
    const { mouth, context, spoken, troubles } = openSpeaker();
    mouth.useSystemVoice(LOCAL_VOICE);
    const { finished } = mouth.speak(['Stop.']);
    spoken[0]?.dispatchEvent(Object.assign(new Event('error'), { error: 'synthesis-failed' }));
    await settled();
    expect(troubles.map(({ kind }) => kind)).toEqual(['systemVoiceFailed']);
    context.sources[0]?.dispatchEvent(new Event('ended'));
    expect(await finished).toBe('done');
  });

  it('reports both when neither voice can say it', async () => {
    const { mouth, spoken, troubles } = openSpeaker();
    mouth.useSystemVoice(LOCAL_VOICE);
    const { started, finished } = mouth.speak(['Never recorded.']);
    spoken[0]?.dispatchEvent(Object.assign(new Event('error'), { error: 'synthesis-failed' }));
    expect([await started, await finished]).toEqual(['never', 'failed']);
    expect(troubles.map(({ kind }) => kind)).toEqual(['systemVoiceFailed', 'noClip']);
  });

  it('does not let the recorded voice begin once a failing one has been cut', async () => {
    const { mouth, context, spoken } = openSpeaker();
    mouth.useSystemVoice(LOCAL_VOICE);
    const { finished, cut } = mouth.speak(['Stop.']);
    spoken[0]?.dispatchEvent(Object.assign(new Event('error'), { error: 'synthesis-failed' }));
    cut();
    await settled();
    expect(context.sources.filter(({ stopped }) => !stopped)).toEqual([]);
    expect(await finished).toBe('failed');
  });
});
