import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClipLibrary, PlayableClip } from '../../../audio/mouth/clip-library.ts';
import { gapAfterS } from '../../../audio/mouth/joining.ts';
import { recordedVoice } from '../../../audio/mouth/recorded-voice.ts';
import { SpeechFault, type SpeechTrouble } from '../../../audio/mouth/voice.ts';
import { FakeContext } from './fake-context.ts';

/** Every clip lasts a tenth of a second for each letter at its own pace; texts that begin with "lost" have none. */
const library: ClipLibrary = {
  async clip(fragment, pace) {
    if (fragment.startsWith('lost'))
      throw new SpeechFault('noClip', `There is no recording of "${fragment}".`);
    return {
      buffer: {} as AudioBuffer,
      speechStartS: 0.07,
      speechS: fragment.length / 10 / pace,
    } satisfies PlayableClip;
  },
};

function openVoice(pace = 1) {
  const context = new FakeContext();
  const troubles: SpeechTrouble[] = [];
  const voice = recordedVoice(
    context.asContext(),
    {} as AudioNode,
    library,
    () => pace,
    (trouble) => troubles.push(trouble),
  );
  return { context, voice, troubles };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the recorded voice', () => {
  it('plays the fragments in order, back to back but for the gaps their punctuation asks', async () => {
    const fragment = fc.stringMatching(/^[a-k]{1,9}[.,:?]?$/);
    await fc.assert(
      fc.asyncProperty(fc.array(fragment, { minLength: 1, maxLength: 8 }), async (say) => {
        const { context, voice } = openVoice();
        voice.speak(say);
        await settled();
        expect(context.sources.length).toBe(say.length);
        let expectedS = context.sources[0]?.played?.whenS ?? Number.NaN;
        expect(expectedS).toBeGreaterThan(context.currentTime);
        for (const [index, { played }] of context.sources.entries()) {
          const text = say[index] ?? '';
          expect(played?.whenS).toBeCloseTo(expectedS, 9);
          expect(played?.offsetS).toBe(0.07);
          expect(played?.lengthS).toBe(text.length / 10);
          expectedS += text.length / 10 + gapAfterS(text);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('draws out clips and gaps alike at a slower pace', async () => {
    const { context, voice } = openVoice(0.8);
    voice.speak(['one.', 'two.']);
    await settled();
    const [first, second] = context.sources;
    expect(first?.played?.lengthS).toBeCloseTo(0.4 / 0.8, 9);
    expect((second?.played?.whenS ?? 0) - (first?.played?.whenS ?? 0)).toBeCloseTo(
      (0.4 + gapAfterS('one.')) / 0.8,
      9,
    );
  });

  it('is done when the last fragment has ended, not before', async () => {
    const { context, voice, troubles } = openVoice();
    const { finished, started } = voice.speak(['one', 'two']);
    await settled();
    let end = 'none yet';
    finished.then((how) => {
      end = how;
    });
    context.sources[0]?.dispatchEvent(new Event('ended'));
    await settled();
    expect(end).toBe('none yet');
    context.sources[1]?.dispatchEvent(new Event('ended'));
    expect(await finished).toBe('done');
    expect(await started).not.toBeUndefined();
    expect(troubles).toEqual([]);
  });

  it('plays nothing of a Say that lacks one clip, and reports it once', async () => {
    const { context, voice, troubles } = openVoice();
    const say = ['forty', 'lost pounds'];
    const { started, finished } = voice.speak(say);
    expect(await finished).toBe('failed');
    expect(await started).toBe('never');
    expect(context.sources).toEqual([]);
    expect(troubles).toEqual([{ kind: 'noClip', say, message: 'There is no recording of "lost pounds".' }]);
  });

  it('cuts what it says when cut, or when told to say something else', async () => {
    const { context, voice } = openVoice();
    const first = voice.speak(['one']);
    await settled();
    const second = voice.speak(['two']);
    expect(await first.finished).toBe('cut');
    expect(context.sources[0]?.stopped).toBe(true);
    await settled();
    second.cut();
    second.cut();
    expect(await second.finished).toBe('cut');
    expect(context.sources[1]?.stopped).toBe(true);
  });

  it('plays nothing when cut before its clips are there', async () => {
    const { context, voice, troubles } = openVoice();
    const { started, finished, cut } = voice.speak(['one']);
    cut();
    await settled();
    expect([await started, await finished]).toEqual(['never', 'cut']);
    expect(context.sources).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('fails, and does not hang, when the sound is taken away', async () => {
    const { context, voice, troubles } = openVoice();
    const { finished } = voice.speak(['one']);
    await settled();
    context.becomes('suspended');
    expect(await finished).toBe('failed');
    expect(troubles.map(({ kind }) => kind)).toEqual(['soundBlocked']);
    context.becomes('closed');
    expect(troubles.length).toBe(1);
  });

  it('says that the screen must be touched when the browser gives no sound', async () => {
    const { context, voice, troubles } = openVoice();
    context.state = 'suspended';
    expect(await voice.speak(['one']).finished).toBe('failed');
    expect(troubles.map(({ message }) => message)).toEqual([
      'The browser gives no sound yet. Touch the screen once.',
    ]);
  });

  it('reports an empty Say', async () => {
    const { voice, troubles } = openVoice();
    expect(await voice.speak([]).finished).toBe('failed');
    expect(troubles.map(({ kind }) => kind)).toEqual(['nothingToSay']);
  });
});
