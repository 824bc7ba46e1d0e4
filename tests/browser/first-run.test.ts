import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { taughtForm } from '../../grammar/lexicon.ts';
import { CAUTIONS } from '../../src/cautions.ts';
import { CHECKED_PHRASES } from '../../src/screens/hearing-check.ts';
import { serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';
import type { ServedBuild } from './serve-build.ts';
import { giveSpokenMicrophone, HURRIED_MOUTH, sayInto, spokenClip } from './spoken-microphone.ts';

const PATIENCE_MS = 150_000;
const NEXT_PHRASE_MS = 40_000;

let app: ServedBuild;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  [app, browser] = await Promise.all([serveApp(), launchChromium()]);
});

afterAll(async () => {
  await Promise.all([app?.close(), browser?.close()]);
});

beforeEach(async () => {
  page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
});

afterEach(() => page?.context().close());

/** From the first sight of the app to the microphone, as a newcomer goes. */
async function toTheHearingCheck(mouthSpeed = 1): Promise<void> {
  await giveSpokenMicrophone(page, { roomDbfs: -55, mouthSpeed });
  await page.goto(app.url);
  for (const caution of CAUTIONS) await page.getByText(caution).waitFor();
  await page.getByRole('button', { name: 'I have read that' }).click();
  await page.getByRole('button', { name: 'Switch microphone and voice on' }).click();
}

/** Waits for the app to ask for a phrase, and until its own voice has had time to say it. */
async function untilAsked(nth: number): Promise<void> {
  await page.waitForFunction(
    (at) => document.querySelectorAll('.hearing-marks [data-heard="waiting"]').length === 3 - at,
    nth,
    { timeout: NEXT_PHRASE_MS },
  );
  await page.waitForSelector('.whose-turn[data-turn="yours"]', { timeout: NEXT_PHRASE_MS });
}

describe('the first run', () => {
  it(
    'shows the cautions, hears three phrases said aloud, and lets the newcomer in',
    async () => {
      const began = performance.now();
      await toTheHearingCheck();
      for (const [at, meaning] of CHECKED_PHRASES.entries()) {
        await untilAsked(at);
        await sayInto(page, spokenClip(taughtForm(meaning), at === 1 ? 'rms' : 'slt'));
      }
      await page.getByText('I hear you well.').waitFor();
      expect(await page.locator('.hearing-marks [data-heard="true"]').count()).toBe(3);
      console.info(`First run, a fluent reader: ${((performance.now() - began) / 1000).toFixed(0)} s.`);
      await page.getByRole('button', { name: 'Go to the start' }).click();
      await page.getByRole('link', { name: 'New job' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'says what to do when other words were said, and can be tried once more',
    async () => {
      await toTheHearingCheck(HURRIED_MOUTH);
      for (const at of CHECKED_PHRASES.keys()) {
        await untilAsked(at);
        await sayInto(page, spokenClip('my cousin bought a yellow house', 'rms'));
      }
      await page.getByText('I did not hear you.').waitFor();
      expect(await page.locator('.say-this').textContent()).toMatch(/Come nearer, or use the buttons/);
      expect(await page.locator('.hearing-marks [data-heard="false"]').count()).toBe(3);
      await page.getByRole('button', { name: 'Try once more' }).click();
      await untilAsked(0);
    },
    PATIENCE_MS,
  );
});
