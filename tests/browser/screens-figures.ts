/**
 * Prints how long a person waits for the screen, on this machine: `npx tsx tests/browser/screens-figures.ts`. Nothing
 * is asserted; the figures of two machines cannot be compared.
 */
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { PREFERENCES_PLACE } from '../../src/screens/preferences.ts';
import { serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';

const STARTS = 7;

const app = await serveApp();
const browser = await launchChromium();
try {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(
    (place) => localStorage.setItem(place, JSON.stringify({ wasWelcomed: true })),
    PREFERENCES_PLACE,
  );
  const first = await context.newPage();
  const scripts: number[] = [];
  first.on('response', async (response) => {
    if (response.request().resourceType() === 'script') scripts.push(gzipSync(await response.body()).length);
  });
  await first.goto(app.url);
  await first.getByText('Ready: everything works with no network.').waitFor();
  console.log(`Scripts before a voice is wanted: ${(sum(scripts) / 1024).toFixed(1)} KB gzipped.`);
  await first.close();

  await context.setOffline(true);
  const views: number[] = [];
  const presses: number[] = [];
  for (let start = 0; start < STARTS; start += 1) {
    const page = await context.newPage();
    await page.goto(app.url);
    await page.getByRole('link', { name: 'New job' }).waitFor();
    views.push(await firstContentMs(page));
    await page.getByRole('link', { name: 'New job' }).click();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.waitForSelector('.job');
    presses.push(await pressMs(page, 'It keeps letting go'));
    presses.push(await pressMs(page, "Everyone is told and I'm in charge"));
    await page.close();
  }
  console.log(`First view from cold, no network: median ${median(views).toFixed(0)} ms of ${STARTS}.`);
  console.log(
    `A press to the next question drawn: median ${median(presses).toFixed(0)} ms, worst ${Math.max(...presses).toFixed(0)} ms of ${presses.length}.`,
  );
} finally {
  await browser.close();
  await app.close();
}

function firstContentMs(page: Page): Promise<number> {
  return page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
  );
}

/** From the press inside the page to the frame that shows another question. */
function pressMs(page: Page, name: string): Promise<number> {
  return page.getByRole('button', { name }).evaluate(async (button) => {
    const before = document.querySelector('.question')?.textContent;
    const began = performance.now();
    (button as HTMLButtonElement).click();
    while (document.querySelector('.question')?.textContent === before) {
      await new Promise(requestAnimationFrame);
    }
    await new Promise(requestAnimationFrame);
    return performance.now() - began;
  });
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
