import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EarsEvent } from '../../audio/ears/listener.ts';
import { launchChromium } from './chromium.ts';
import type { EarsPage } from './ears-page/main.ts';
import { serveEarsPage } from './ears-server.ts';
import type { ServedBuild } from './serve-build.ts';
import { giveSpokenMicrophone, sayInto, spokenClip } from './spoken-microphone.ts';

declare global {
  interface Window {
    readonly earsPage: EarsPage;
    ears: ReturnType<EarsPage['makeListener']>;
  }
}

const SLOW_MS = 240_000;

/** The answers to one question, as the app would set them. */
const answers = [
  'left_hand_side',
  'right_hand_side',
  'both_knotters',
  "i'm_not_sure_about_that",
  'say_that_again',
];

let server: ServedBuild;
let browser: Browser;

beforeAll(async () => {
  server = await serveEarsPage();
  browser = await launchChromium();
}, SLOW_MS);

afterAll(async () => {
  await browser.close();
  await server.close();
}, SLOW_MS);

/** A page with ears in a room of that loudness, started and listening for the answers. @param before run in the page first */
async function openEars(roomDbfs = -60, before?: () => void): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await giveSpokenMicrophone(page, { roomDbfs });
  if (before) await page.addInitScript(before);
  await page.goto(server.url);
  const started = await page.evaluate(async (list) => {
    window.ears = window.earsPage.makeListener();
    const outcome = await window.ears.start();
    window.ears.listenFor(list, { canGoOn: false });
    // The room before the first phrase.
    await new Promise((resolve) => setTimeout(resolve, 2_000));
    return outcome;
  }, answers);
  expect(started).toEqual({ ok: true });
  return page;
}

function eventCount(page: Page): Promise<number> {
  return page.evaluate(() => window.earsPage.events.length);
}

function hasHeardStop(page: Page): Promise<boolean> {
  return page.evaluate(() => window.earsPage.events.some(({ type }) => type === 'stop.heard'));
}

/** The first event of a kind after so many events. */
async function nextEvent<Type extends EarsEvent['type']>(
  page: Page,
  type: Type,
  from: number,
): Promise<Extract<EarsEvent, { type: Type }>> {
  const find = ([wanted, start]: [string, number]) =>
    window.earsPage.events.slice(start).find((event) => event.type === wanted);
  const found = await page.waitForFunction(find, [type, from] as [string, number], { timeout: 30_000 });
  return (await found.jsonValue()) as Extract<EarsEvent, { type: Type }>;
}

/** Says a phrase and returns what was understood. */
async function hear(page: Page, phrase: string, voice: 'slt' | 'rms' = 'slt') {
  const from = await eventCount(page);
  const endedAtMs = await sayInto(page, spokenClip(phrase, voice));
  const { utterance } = await nextEvent(page, 'utterance', from);
  return { utterance, endedAtMs };
}

/** Ends the newest worker of a kind as one ends that runs out of memory: an error, then silence. */
function runOutOfMemory(page: Page, kind: 'workers' | 'frontEnds'): Promise<unknown> {
  return page.evaluate(
    (of) => window.earsPage[of].at(-1)?.dispatchEvent(new ErrorEvent('error', { message: 'gone' })),
    kind,
  );
}

describe('the ears in a real browser', () => {
  it(
    'understand phrases as they are said, one after the other, bound them in time, and take nothing else for one',
    async () => {
      const page = await openEars();
      for (const [i, answer] of answers.entries()) {
        const { utterance, endedAtMs } = await hear(page, answer.replaceAll('_', ' '), i % 2 ? 'rms' : 'slt');
        expect(utterance.text).toBe(answer);
        expect(utterance.margin).toBeGreaterThan(0.5);
        expect(utterance.hearing).toBe('good');
        // On one clock with the page; a busy machine hands sound on late, so not to the tenth of a second.
        expect(Math.abs(utterance.endedAtMs - endedAtMs)).toBeLessThan(1_500);
        expect(utterance.startedAtMs).toBeLessThan(utterance.endedAtMs);
        expect(utterance.endedAtMs).toBeLessThan(utterance.decidedAtMs);
      }
      const { utterance } = await hear(page, 'tomorrow we will drive over to the seaside for lunch');
      expect(answers).not.toContain(utterance.text);
      // Every recogniser that was made was removed: the library keeps the ones that are forgotten.
      const { create, remove } = await page.evaluate(() => window.earsPage.recognisers);
      expect(create).toBeGreaterThan(answers.length);
      expect(remove).toBe(create);
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'hear nothing while they are shut, but for a stop word called over the voice, and open again',
    async () => {
      const page = await openEars();
      const from = await eventCount(page);
      await page.evaluate(() => window.ears.shut());
      await sayInto(page, spokenClip('right hand side'));
      await page.evaluate(() => window.ears.open());
      const { utterance } = await hear(page, 'both knotters');
      expect(utterance.text).toBe('both_knotters');
      const heard = await page.evaluate(
        (start) => window.earsPage.events.slice(start).filter(({ type }) => type === 'utterance').length,
        from,
      );
      expect(heard).toBe(1);

      // Our own voice comes back as a quiet echo; the call is as loud as a voice is.
      await page.evaluate(() => window.ears.shut(['stop_everything_now', 'stop_stop_stop']));
      const beforeStop = await eventCount(page);
      const prompt = spokenClip('which end of the band has a knot in it when you look at the billhook');
      // On a busy machine sound comes in gulps: like a person, the caller calls again when nothing happens.
      for (let calls = 0; calls < 6 && !(await hasHeardStop(page)); calls += 1) {
        const speaking = page.evaluate(
          (wav) => window.spokenMicrophone.say(wav, 0.1),
          prompt.toString('base64'),
        );
        await page.waitForTimeout(1_200);
        await sayInto(page, spokenClip('stop everything now'));
        await speaking;
        await page.waitForTimeout(1_000);
      }
      expect((await nextEvent(page, 'stop.heard', beforeStop)).word).toBe('stop_everything_now');
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'refuse a phrase that the model does not know instead of being deaf to it',
    async () => {
      const page = await openEars();
      const from = await eventCount(page);
      await page.evaluate(() =>
        window.ears.listenFor(['left_hand_side', 'blue_suede_shoes'], { canGoOn: false }),
      );
      const { failure } = await nextEvent(page, 'failed', from);
      expect(failure).toEqual({ kind: 'phrase-unknown', words: ['blue_suede_shoes'] });
      const told = await page.evaluate((first) => window.earsPage.events.slice(first), from);
      expect(told.map(({ type }) => type)).not.toContain('listening');
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'trust no voice where the browser filters the sound although it was asked not to',
    async () => {
      const page = await openEars(-60, () => {
        const { getSettings } = MediaStreamTrack.prototype;
        MediaStreamTrack.prototype.getSettings = function () {
          return { ...getSettings.call(this), noiseSuppression: true };
        };
      });
      expect(await page.evaluate(() => window.earsPage.events.map(({ type }) => type))).toContain(
        'sound.altered',
      );
      const { utterance } = await hear(page, 'both knotters');
      expect(utterance).toMatchObject({ text: 'both_knotters', hearing: 'poor' });
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'pause while the page is out of sight and hear again afterwards',
    async () => {
      const page = await openEars();
      const hide = (state: 'hidden' | 'visible') =>
        page.evaluate((value) => {
          Object.defineProperty(document, 'visibilityState', { value, configurable: true });
          document.dispatchEvent(new Event('visibilitychange'));
        }, state);
      const from = await eventCount(page);
      await hide('hidden');
      await nextEvent(page, 'paused', from);
      await sayInto(page, spokenClip('left hand side'));
      await hide('visible');
      await nextEvent(page, 'resumed', from);
      await page.waitForTimeout(1_500);
      const { utterance } = await hear(page, 'right hand side');
      expect(utterance.text).toBe('right_hand_side');
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'start the recogniser anew when its worker dies',
    async () => {
      const page = await openEars();
      const from = await eventCount(page);
      await runOutOfMemory(page, 'workers');
      expect((await nextEvent(page, 'failed', from)).failure).toEqual({
        kind: 'recogniser-died',
        detail: 'gone',
      });
      await nextEvent(page, 'recovered', from);
      const { utterance } = await hear(page, 'both knotters');
      expect(utterance.text).toBe('both_knotters');
      // The recogniser's and the front end's.
      expect(page.workers()).toHaveLength(2);
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'say so when the sound can no longer be prepared',
    async () => {
      const page = await openEars();
      const from = await eventCount(page);
      await runOutOfMemory(page, 'frontEnds');
      expect((await nextEvent(page, 'failed', from)).failure).toEqual({
        kind: 'front-end-died',
        detail: 'gone',
      });
      expect(await page.evaluate(() => window.ears.start())).toEqual({ ok: true });
      const { utterance } = await hear(page, 'both knotters');
      expect(utterance.text).toBe('both_knotters');
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'end as they were last told to, however fast they are started and stopped',
    async () => {
      const page = await openEars();
      const outcomes = await page.evaluate(async () => {
        window.ears.stop();
        const first = window.ears.start();
        const same = window.ears.start();
        window.ears.stop();
        const last = window.ears.start();
        return Promise.all([first, same, last].map(async (start) => (await start).ok));
      });
      expect(outcomes).toEqual([false, false, true]);
      await expect.poll(() => page.workers().length).toBe(2);
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'leave no worker and no recording behind when they stop, and start again',
    async () => {
      const page = await openEars();
      await page.evaluate(() => window.ears.stop());
      await expect.poll(() => page.workers().length).toBe(0);
      const again = await page.evaluate(async () => {
        const outcome = await window.ears.start();
        await new Promise((resolve) => setTimeout(resolve, 1_500));
        return outcome;
      });
      expect(again).toMatchObject({ ok: true });
      const { utterance } = await hear(page, 'left hand side');
      expect(utterance.text).toBe('left_hand_side');
      await page.context().close();
    },
    SLOW_MS,
  );
});
