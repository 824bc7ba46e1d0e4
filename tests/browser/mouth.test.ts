import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { activeLevel } from '../../audio/mouth/active-level.ts';
import { endsSentence, gapAfterS } from '../../audio/mouth/joining.ts';
import { VOICE_SETTINGS } from '../../audio/mouth/render/voice-settings.ts';
import { type Say, sayMeasure, saySide } from '../../grammar/say.ts';
import { committedClip, committedVoice, startDecoder } from '../audio/mouth/committed-voice.ts';
import { launchChromium } from './chromium.ts';
import type { MouthPage } from './mouth-page/main.ts';
import { type MouthServer, serveMouthPage } from './mouth-server.ts';

declare const mouthPage: MouthPage;

/** The rate of the synthesiser, so that what sounds can be laid over what it spoke. */
const RATE_HZ = VOICE_SETTINGS.sampleRateHz;
/** How far off its place a fragment is looked for, samples: 30 ms. */
const REACH = 0.03 * RATE_HZ;
const READ_BACK: Say = [...sayMeasure(142, 'poundForce'), ...saySide('left', 'short')];

let server: MouthServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  [server, browser] = await Promise.all([serveMouthPage(), launchChromium()]);
}, 60_000);

afterAll(async () => {
  await Promise.all([server?.close(), browser?.close()]);
});

beforeEach(async () => {
  page = await browser.newPage();
  await page.goto(server.url);
  await page.waitForFunction(() => 'mouthPage' in window);
});

afterEach(async () => {
  await page.unrouteAll({ behavior: 'ignoreErrors' });
  await page.close();
});

describe('the recorded voice in Chromium', { timeout: 60_000 }, () => {
  it('says every fragment of a Say, in order, joined as it should be', async () => {
    // No system voice can have spoken in its place.
    expect(await page.evaluate(() => mouthPage.localVoiceNames())).toEqual([]);
    const voice = await committedVoice();
    const sentences = Object.entries(voice.index.clips)
      .filter(([text]) => endsSentence(text))
      .sort(([, a], [, b]) => a.speechMs - b.speechMs)
      .map(([text]) => text)
      .slice(0, 2);
    const said: Say = [...sentences, ...READ_BACK];
    const { finished, started, askedAt, samples, troubles } = await page.evaluate(
      async ([say, rate]) => {
        const { mouth, heard, troubles } = await mouthPage.openMouth(rate);
        const askedAt = performance.now();
        const utterance = mouth.speak(say);
        const started = await utterance.started;
        return { finished: await utterance.finished, started, askedAt, samples: await heard(), troubles };
      },
      [said, RATE_HZ] as const,
    );
    expect(troubles).toEqual([]);
    expect(finished).toBe('done');
    expect(started).toBeGreaterThan(askedAt);
    const sound = Float32Array.from(samples);
    const { start, end } = soundingSpan(sound);
    const level = activeLevel(sound.subarray(start, end), RATE_HZ).levelDbfs;
    expect(Math.abs(level - VOICE_SETTINGS.levelDbfs)).toBeLessThan(2);
    // What sounded is laid against what mpg123, a decoder of another house, makes of the same clips.
    const decoded = await startDecoder();
    let expectedAt = start;
    for (const fragment of said) {
      const { speech } = await decoded(committedClip(voice, fragment).mp3);
      const { at, likeness } = bestPlace(speech, sound, expectedAt);
      expect(likeness, fragment).toBeGreaterThan(0.95);
      expectedAt = at + speech.length + gapAfterS(fragment) * RATE_HZ;
    }
    expect(Math.abs(end - expectedAt) / RATE_HZ).toBeLessThan(0.1);
  });

  it('falls silent when cut and says so', async () => {
    const { finished, cutAfter, samples } = await page.evaluate(
      async ([say, rate]) => {
        const { mouth, heard, context } = await mouthPage.openMouth(rate);
        const utterance = mouth.speak(say);
        await utterance.started;
        await new Promise((resolve) => setTimeout(resolve, 300));
        const cutAfter = context.currentTime;
        utterance.cut();
        await new Promise((resolve) => setTimeout(resolve, 500));
        return { finished: await utterance.finished, cutAfter, samples: await heard() };
      },
      [READ_BACK, RATE_HZ] as const,
    );
    expect(finished).toBe('cut');
    const { start, end } = soundingSpan(Float32Array.from(samples));
    expect(end).toBeGreaterThan(start);
    expect(end - start).toBeLessThan(cutAfter * RATE_HZ + 0.1 * RATE_HZ);
  });

  it('says nothing at all when one fragment has no clip, and names it', async () => {
    const { started, finished, troubles, samples } = await page.evaluate(
      async ([say]) => {
        const { mouth, heard, troubles } = await mouthPage.openMouth();
        const utterance = mouth.speak([...say, 'This was never recorded.']);
        return {
          started: await utterance.started,
          finished: await utterance.finished,
          troubles,
          samples: await heard(),
        };
      },
      [READ_BACK] as const,
    );
    expect({ started, finished }).toEqual({ started: 'never', finished: 'failed' });
    expect(troubles.map(({ kind }) => kind)).toEqual(['noClip']);
    expect(troubles[0]?.message).toContain('This was never recorded.');
    expect(troubles[0]?.say).toEqual([...READ_BACK, 'This was never recorded.']);
    expect(Math.max(...samples.map(Math.abs))).toBe(0);
  });

  it.each([
    ['cut off', (body: Buffer) => body.subarray(0, body.length >> 1)],
    ['overwritten', (body: Buffer) => Buffer.alloc(body.length)],
  ])('reports a pack that is %s', async (_, spoil) => {
    await page.route('**/*.clips', async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: spoil(await response.body()) });
    });
    const { finished, troubles } = await page.evaluate(
      async ([say]) => {
        const { mouth, troubles } = await mouthPage.openMouth();
        return { finished: await mouth.speak(say).finished, troubles };
      },
      [READ_BACK] as const,
    );
    expect(finished).toBe('failed');
    expect(troubles.map(({ kind }) => kind)).toEqual(['badClip']);
  });

  it('says one thing at a time, and can be interrupted by the browser without hanging', async () => {
    const ends = await page.evaluate(
      async ([say]) => {
        const { mouth, context, troubles } = await mouthPage.openMouth();
        const first = mouth.speak(say);
        await first.started;
        const second = mouth.speak(say);
        await second.started;
        await context.suspend();
        return [await first.finished, await second.finished, troubles.map(({ kind }) => kind).join()];
      },
      [READ_BACK] as const,
    );
    expect(ends).toEqual(['cut', 'failed', 'soundBlocked']);
  });
});

describe('an earcon in Chromium', () => {
  it('sounds, and is over when it says so', async () => {
    const samples = await page.evaluate(async (rate) => {
      const { mouth, context, heard } = await mouthPage.openMouth(rate);
      await context.resume();
      await mouth.earcon('heard');
      return heard();
    }, RATE_HZ);
    const { start, end } = soundingSpan(Float32Array.from(samples));
    expect((end - start) / RATE_HZ).toBeCloseTo(0.18, 1);
  });
});

function soundingSpan(samples: Float32Array): { readonly start: number; readonly end: number } {
  const audible = 10 ** (-50 / 20);
  return {
    start: samples.findIndex((sample) => Math.abs(sample) > audible),
    end: samples.findLastIndex((sample) => Math.abs(sample) > audible) + 1,
  };
}

/** Where `wanted` fits best into `sound` within 30 ms of `near`, by normalised correlation. */
function bestPlace(
  wanted: Float32Array,
  sound: Float32Array,
  near: number,
): { readonly at: number; readonly likeness: number } {
  let best = { at: near, likeness: -1 };
  for (let at = Math.max(0, near - REACH); at <= near + REACH; at++) {
    const likeness = correlation(wanted, sound.subarray(at, at + wanted.length));
    if (likeness > best.likeness) best = { at, likeness };
  }
  return best;
}

function correlation(a: Float32Array, b: Float32Array): number {
  let [both, ofA, ofB] = [0, 0, 0];
  for (let index = 0; index < a.length; index++) {
    const [first, second] = [a[index] ?? 0, b[index] ?? 0];
    both += first * second;
    ofA += first * first;
    ofB += second * second;
  }
  return ofA * ofB > 0 ? both / Math.sqrt(ofA * ofB) : 0;
}
