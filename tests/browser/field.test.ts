import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type AppServer, serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';

/** A PNG of one pixel: enough for a browser to decode, draw and make smaller. */
const PICTURE = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

let server: AppServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [server, browser] = await Promise.all([serveApp(), launchChromium()]);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  page = await context.newPage();
});

afterEach(() => context.close());

async function begin(button: 'Begin' | 'Count bales first' = 'Begin'): Promise<string> {
  await page.goto(`${server.url}#/new`);
  await page.getByRole('button', { name: button }).click();
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  return page.evaluate(() => location.hash.replace('#/job/', ''));
}

async function openCard(jobId: string): Promise<void> {
  await page.evaluate((id) => {
    location.hash = `#/record/${id}`;
  }, jobId);
  await page.locator('article.paper').waitFor();
}

async function tapNumber(digits: string): Promise<void> {
  await page.getByRole('button', { name: 'Tap in the number' }).click();
  for (const digit of digits) await page.getByRole('button', { name: digit, exact: true }).click();
  await page.getByRole('button', { name: 'Give it' }).click();
}

describe('a figure by touch', { timeout: 90_000 }, () => {
  it('is asked one number at a time beside the job, answered, and on the card', async () => {
    const jobId = await begin();
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: /how thick is every flake/i }).click();
    const question = page.getByRole('region', { name: 'Question' });
    await expect.poll(() => question.innerText()).toContain('How long is the bale?');
    // A 400 inch bale is questioned with what can be.
    await tapNumber('400');
    await expect.poll(() => question.innerText()).toMatch(/twelve to sixty inches/i);
    await tapNumber('36');
    await expect.poll(() => question.innerText()).toContain('Is that right?');
    await page.getByRole('button', { name: /that's right/i }).click();
    await expect.poll(() => question.innerText()).toContain('How many plunger strokes go into a bale?');
    await tapNumber('12');
    await page.getByRole('button', { name: /that's right/i }).click();
    await expect.poll(() => page.innerText('.sheet')).toContain('Each flake is three inches');
    expect(await page.innerText('.sheet')).toContain('derived');
    await page.getByRole('button', { name: 'Back to the question' }).click();
    await expect.poll(() => question.innerText()).toContain('What is the knotter doing?');
    await openCard(jobId);
    expect(await page.innerText('article.paper')).toContain('Each flake is three inches');
  });
});

describe('the numbers of a baler', { timeout: 90_000 }, () => {
  it('are refused with a reason, kept when they are right, given to its jobs, and not asked for again', async () => {
    await page.goto(`${server.url}#/machines`);
    await page.getByRole('button', { name: 'Add a baler' }).click();
    await page.getByLabel('What you call it').fill('Home farm');
    await page.getByText('Its own limits').click();
    const pull = page.getByRole('group', { name: 'Pull at which the twine holder lets the strand go' });
    expect(await pull.innerText()).toContain('check the operator’s manual of your machine');
    const [low, high] = [pull.getByRole('textbox').nth(0), pull.getByRole('textbox').nth(1)];
    await low.fill('35');
    await high.fill('25');
    await pull.getByLabel('Where that comes from').fill('page 34');
    await page.getByText('Its bales and its twine').click();
    await page.getByLabel('Bale length, inches').fill('36');
    await page.getByLabel('Strokes to a bale').fill('12');
    await page.getByRole('button', { name: 'Keep it' }).click();
    expect(await page.getByRole('alert').innerText()).toContain(
      'The second number has to be the higher one.',
    );
    await low.fill('25');
    await high.fill('35');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('button', { name: 'Home farm' }).waitFor();

    await page.goto(`${server.url}#/new`);
    await page.getByRole('button', { name: 'Home farm' }).click();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: /how thick is every flake/i }).click();
    await expect.poll(() => page.innerText('.sheet')).toContain('Each flake is three inches');
    // The job was told the limits as it began, and its log says so.
    const told = await page.evaluate(
      () =>
        new Promise((resolve, reject) => {
          const opening = indexedDB.open('knotwright-records');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const all = opening.result.transaction('logs').objectStore('logs').getAll();
            all.onsuccess = () =>
              resolve(
                all.result
                  .flatMap(({ lines }) => JSON.parse(lines))
                  .map(({ event }) => event)
                  .find(({ type }) => type === 'machine.known'),
              );
          };
        }),
    );
    expect(told).toMatchObject({ bands: [{ of: 'holderPull', source: 'page 34' }] });
  });
});

describe('counting bales by touch', { timeout: 90_000 }, () => {
  it('counts, takes back, finds one side, and keeps it all through a reload', async () => {
    const jobId = await begin('Count bales first');
    const figures = page.locator('.count-figures');
    const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
    await figures.waitFor();
    for (let bale = 1; bale <= 10; bale++) {
      await press('Miss left');
      await expect.poll(() => figures.innerText()).toContain(`Left ${bale}`);
    }
    await press('Miss right');
    await expect.poll(() => figures.innerText()).toContain('right 1');
    await press('Take the last one back');
    await expect.poll(() => figures.innerText()).toContain('right 0');
    await press('What pattern?');
    await expect.poll(() => page.innerText('.sheet')).toContain('Most of the misses are on one side');
    await page.reload();
    await openCard(jobId);
    const card = await page.innerText('article.paper');
    expect(card).toContain('10 of 10 bales missed (left 10, right 0)');
    expect(card).toContain('Most of the misses are on the left');
    const chart = page.locator('article.paper svg[role=img]').first();
    expect(await chart.getAttribute('aria-label')).toContain('10 of 10 bales missed');
  });
});

describe('a photo', { timeout: 90_000 }, () => {
  it('is taken, shown on the card, and there after a reload', async () => {
    const jobId = await begin();
    await openCard(jobId);
    const input = page.getByLabel('Photo: Failed string');
    expect(await input.getAttribute('capture')).toBe('environment');
    await input.setInputFiles({ name: 'string.png', mimeType: 'image/png', buffer: PICTURE });
    const picture = page.getByRole('img', { name: 'Failed string' });
    await picture.waitFor();
    expect(await picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(1);
    await page.reload();
    await picture.waitFor();
    expect(await picture.evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth))).toBe(
      1,
    );
  });

  it('is taken while a job runs, and the job goes on', async () => {
    const jobId = await begin();
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page
      .getByLabel('Photo: Its old end')
      .setInputFiles({ name: 'string.png', mimeType: 'image/png', buffer: PICTURE });
    await expect.poll(() => page.locator('.photo-taker [role=status]').innerText()).toContain('Kept');
    await page.getByRole('button', { name: 'Back to the question' }).click();
    await page.getByRole('region', { name: 'Question' }).waitFor();
    await openCard(jobId);
    await page.getByRole('img', { name: /^Its old end/ }).waitFor();
  });

  it('that is no picture is refused in words, and the card is as it was', async () => {
    const jobId = await begin();
    await openCard(jobId);
    const text = { name: 'string.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') };
    await page.getByLabel('Photo: Machine').setInputFiles(text);
    const said = page.locator('.photo-taker [role=status]');
    await expect.poll(() => said.innerText()).toContain('no picture this tablet can read');
    expect(await page.locator('article.paper img').count()).toBe(0);
  });

  it('that finds no room says so and the record stays', async () => {
    const quota = await context.newCDPSession(page);
    // Before the store is opened: Chromium remembers for a while how much room there was.
    const origin = new URL(server.url).origin;
    await quota.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 150_000 });
    const jobId = await begin();
    await openCard(jobId);
    // Noise does not shrink: a picture that a full tablet has no room for.
    const noisy = await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(1600, 1200);
      const pen = canvas.getContext('2d');
      const noise = new ImageData(1600, 1200);
      for (let at = 0; at < noise.data.length; at++) noise.data[at] = (at * 2654435761) % 251;
      pen?.putImageData(noise, 0, 0);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
      return [...new Uint8Array(await blob.arrayBuffer())];
    });
    await page
      .getByLabel('Photo: Failed string')
      .setInputFiles({ name: 'noise.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(noisy) });
    const said = page.locator('.photo-taker [role=status]');
    await expect.poll(() => said.innerText()).toMatch(/full, so the photo was not kept|too large to keep/);
    expect(await page.locator('article.paper img').count()).toBe(0);
  });
});
