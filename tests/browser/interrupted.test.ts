import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';
import type { ServedBuild } from './serve-build.ts';
import { giveSpokenMicrophone } from './spoken-microphone.ts';

/** The opening, and the seven steps of a safe stop, each confirmed by its first button. */
const TO_SAFE_STOP = 8;
const PATIENCE_MS = 180_000;

let app: ServedBuild;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [app, browser] = await Promise.all([serveApp(), launchChromium()]);
});

afterAll(async () => {
  await Promise.all([app?.close(), browser?.close()]);
});

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  page = await context.newPage();
  await giveSpokenMicrophone(page, { roomDbfs: -55 });
});

afterEach(() => context?.close());

async function beginJob(): Promise<void> {
  await page.goto(`${app.url}#/new`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.waitForSelector('.job');
}

function safety(): Promise<string> {
  return page.locator('.safety-word').innerText();
}

/** Presses the first answer until the machine is at a safe stop. */
async function toSafeStop(): Promise<void> {
  for (let step = 0; step < TO_SAFE_STOP; step += 1) {
    const before = await page.locator('h1.question').innerText();
    await page.locator('.answer-tags .tag').first().click();
    await page.waitForFunction(
      (asked) => document.querySelector('h1.question')?.textContent !== asked,
      before,
    );
  }
  await page.waitForSelector('.safety-plate[data-safety="eyesOnly"]');
}

/** What the browser tells a page that goes into the background, or comes back. */
function showPage(state: 'hidden' | 'visible'): Promise<void> {
  return page.evaluate((to) => {
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => to });
    document.dispatchEvent(new Event('visibilitychange'));
  }, state);
}

describe('a page that comes back from the background after an hour', () => {
  it(
    'has voided what was confirmed, says so, and goes on by voice',
    async () => {
      await page.clock.install();
      await beginJob();
      await page.waitForSelector('[data-turn="listening"]', { state: 'attached', timeout: 90_000 });
      await toSafeStop();
      await showPage('hidden');
      await page.clock.fastForward('01:00:00');
      expect(await safety()).toMatch(/keep out/i);
      await showPage('visible');
      expect(await safety()).toMatch(/keep out/i);
      await page.getByRole('heading', { level: 1, name: /Hands out of the machine/ }).waitFor();
      // It speaks again by itself, and then listens.
      await page.waitForSelector('[data-turn="speaking"]', { state: 'attached', timeout: 30_000 });
      await page.waitForSelector('[data-turn="listening"]', { state: 'attached', timeout: 60_000 });
    },
    PATIENCE_MS,
  );
});

describe('a tablet whose storage was cleared between two visits', () => {
  it(
    'starts as on the first day, and keeps the next job',
    async () => {
      await beginJob();
      await page.locator('.answer-tags .tag').first().click();
      await page.goto('about:blank');
      const session = await context.newCDPSession(page);
      await session.send('Storage.clearDataForOrigin', {
        origin: new URL(app.url).origin,
        storageTypes: 'all',
      });
      await page.goto(app.url);
      await page.getByRole('button', { name: 'I have read that' }).click();
      await page.getByRole('button', { name: 'Go on with buttons only' }).click();
      await page.getByRole('link', { name: 'New job' }).waitFor();
      expect(await page.getByRole('heading', { name: 'Still open' }).count()).toBe(0);
      expect(await page.getByRole('alert').count()).toBe(0);

      await beginJob();
      await page.getByRole('button', { name: 'It keeps letting go' }).click();
      await page.getByRole('heading', { level: 1, name: /Tell everyone/ }).waitFor();
      await page.goto(app.url);
      await page.getByRole('link', { name: 'It keeps letting go' }).waitFor();
    },
    PATIENCE_MS,
  );
});
