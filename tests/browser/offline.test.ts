import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { PREFERENCES_PLACE } from '../../src/screens/preferences.ts';
import { type ChangeableApp, serveChangeableApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';

const READY = 'Ready: everything works with no network.';

let app: ChangeableApp;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  [app, browser] = await Promise.all([serveChangeableApp(), launchChromium()]);
});

afterAll(async () => {
  await Promise.all([app?.close(), browser?.close()]);
});

beforeEach(async () => {
  context = await browser.newContext();
  // A tablet stores 27 MB before it is ready, and machines that test are busy: slow is not broken.
  context.setDefaultTimeout(90_000);
  await context.addInitScript(
    (place) => localStorage.setItem(place, JSON.stringify({ wasWelcomed: true })),
    PREFERENCES_PLACE,
  );
});

afterEach(() => context?.close());

describe('a tablet with no network', () => {
  it('starts from cold, runs a job, and has voice and speech model, once the app was opened', async () => {
    const page = await opened();
    await page.close();
    await context.setOffline(true);

    const cold = await context.newPage();
    const failures: string[] = [];
    cold.on('requestfailed', (request) => failures.push(request.url()));
    await cold.goto(app.url);
    await cold.getByText(READY).waitFor();
    await beginJob(cold);
    await cold.getByRole('button', { name: 'It keeps letting go' }).click();
    await cold.getByRole('heading', { level: 1, name: /Tell everyone/ }).waitFor();
    expect(failures).toEqual([]);
    expect(await missingVoicePacks(cold)).toEqual([]);
  });

  it('finds a job again that was begun with the network on', async () => {
    const page = await opened();
    await beginJob(page);
    await page.getByRole('button', { name: 'It keeps letting go' }).click();
    await page.getByRole('heading', { level: 1, name: /Tell everyone/ }).waitFor();
    await page.close();
    await context.setOffline(true);
    const cold = await context.newPage();
    await cold.goto(app.url);
    await cold.getByRole('link', { name: 'It keeps letting go' }).click();
    await cold.waitForSelector('.job');
    expect(await cold.locator('.safety-word').textContent()).not.toBe('Locked out');
  });
});

describe('a newer version', () => {
  it('is offered between jobs, never during one, and is used only when asked for', async () => {
    const page = await opened();
    await beginJob(page);
    const before = await shellCaches(page);
    app.change('service-worker.js', (code) => String(code).replace(/version:(.)/, 'version:$1newer-'));
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const worker = await registration.update().then(() => registration.installing ?? registration.waiting);
      while (worker?.state === 'installing') await new Promise((wait) => setTimeout(wait, 50));
      if (registration.waiting === null) throw new Error('The newer version does not wait.');
    });
    expect(await page.getByRole('button', { name: 'Use the newer version' }).count()).toBe(0);
    expect(await shellCaches(page)).toEqual(expect.arrayContaining([...before]));

    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it for now' }).click();
    await page.getByRole('button', { name: 'Use the newer version' }).click();
    await page.getByText(READY).waitFor();
    const after = await shellCaches(page);
    expect(after).toHaveLength(1);
    expect(after).not.toEqual(before);
  });
});

describe('a voice file that did not arrive whole', () => {
  it.each([
    ['cut short', (body: Buffer) => body.subarray(0, body.length >> 1)],
    ['with other bytes in it', (body: Buffer) => Buffer.alloc(body.length)],
  ])('is not kept when it is %s, and says so', async (_, spoil) => {
    await context.route('**/*.clips', async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: spoil(await response.body()) });
    });
    const page = await context.newPage();
    await page.goto(app.url);
    await page.getByText('did not arrive whole').waitFor();
    expect((await missingVoicePacks(page)).length).toBeGreaterThan(0);
  });
});

/** The app on the tablet in full. */
async function opened(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(app.url);
  await page.getByText(READY).waitFor();
  return page;
}

async function beginJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'New job' }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.waitForSelector('.job');
}

function missingVoicePacks(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const folder = new URL('voice/', document.baseURI);
    const index = await (await fetch(new URL('index.json', folder))).json();
    const files: string[] = Object.values<{ file: string }>(index.packs).map(({ file }) => file);
    const kept = await Promise.all(
      files.map(async (file) => ((await caches.match(new URL(file, folder).href)) ? [] : [file])),
    );
    return kept.flat();
  });
}

function shellCaches(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () =>
    (await caches.keys()).filter((name) => name.startsWith('knotwright-shell-')),
  );
}
