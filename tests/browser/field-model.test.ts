import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { builtModel } from '../../audio/command-model/built.ts';
import { packFieldModel } from '../../audio/field-model/pack-field-model.ts';
import { FIELD_MODEL_FOLDER, type PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import { LINES } from '../../flows/lines.ts';
import { standInFiles, zipped } from '../audio/field-model/stand-in.ts';
import { serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';
import { loseModelFiles } from './recogniser-store.ts';
import type { ServedBuild } from './serve-build.ts';
import { giveSpokenMicrophone, sayInto, spokenClip } from './spoken-microphone.ts';

const SLOW_MS = 240_000;
/** A person who is not understood says it again, but not for ever. */
const MOST_TRIES = 4;
const SAID = 'the left one keeps letting go';

let server: ServedBuild;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let folder: string;

beforeAll(async () => {
  [server, browser] = await Promise.all([serveApp(), launchChromium()]);
  folder = mkdtempSync(join(tmpdir(), 'field-model-'));
}, SLOW_MS);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(folder, { recursive: true });
});

beforeEach(async () => {
  context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    // What it fetches does not come by where a test spoils it.
    serviceWorkers: 'block',
  });
  page = await context.newPage();
});

afterEach(() => context.close());

/** Packs the stand-in beside the built app, once, as `npm run model:field` does before a build. */
function packed(): PackedFieldModel {
  const { zip, published } = zipped(standInFiles());
  const archive = join(folder, published.name);
  writeFileSync(archive, zip);
  const outcome = packFieldModel(archive, published, join(server.folder, FIELD_MODEL_FOLDER));
  if (!outcome.ok) throw new Error(outcome.sentence);
  return outcome.packed;
}

const status = () => page.locator('section', { hasText: 'Speech model' }).getByRole('status');
const fieldButton = () => page.getByRole('button', { name: /^Field model: richer vocabulary, \d+ MB$/ });

async function openSettings(): Promise<void> {
  await page.goto(`${server.url}#/settings`);
  await status().waitFor();
}

async function chooseFieldModel(): Promise<void> {
  await openSettings();
  await fieldButton().click({ timeout: 120_000 });
  await expect.poll(() => status().innerText(), { timeout: 120_000 }).toContain('The field model listens.');
}

/** Says what the knotter does, again where it was not clear, and resolves with what the job went on from. */
async function sayTheSymptom(): Promise<string | null> {
  const notTaken: string[] = [];
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    await page.waitForSelector('[data-turn="listening"]', { state: 'attached', timeout: 120_000 });
    await sayInto(page, spokenClip(SAID));
    const wentOn = await page
      .waitForFunction(
        (opening) => document.querySelector('h1.question')?.textContent !== opening,
        LINES.opening,
        {
          timeout: 15_000,
        },
      )
      .catch(() => undefined);
    if (wentOn) return page.locator('.heard-line q').textContent();
    notTaken.push(await page.locator('.heard-line').innerText());
  }
  throw new Error(`The job did not go on: ${notTaken.join(' / ')}`);
}

describe('without a field model beside the app', () => {
  it('the settings offer none, and say which model listens', { timeout: SLOW_MS }, async () => {
    await openSettings();
    await page.waitForLoadState('networkidle');
    expect(await fieldButton().count()).toBe(0);
    expect(await status().innerText()).toBe('The bundled speech model listens.');
  });
});

describe('with a field model beside the app', () => {
  let field: PackedFieldModel;
  beforeAll(() => {
    field = packed();
  }, SLOW_MS);

  it('it is offered, fetched, tried, chosen, and hears an answer by itself', {
    timeout: SLOW_MS,
  }, async () => {
    await giveSpokenMicrophone(page, { roomDbfs: -60 });
    await chooseFieldModel();
    expect(await fieldButton().getAttribute('aria-pressed')).toBe('true');
    await page.getByText(/^It lacks words for \d+ answers$/).click();
    expect(await page.getByRole('listitem').allInnerTexts()).toContain(
      "It's still hanging on the billhook: by its button only.",
    );
    await page.reload();
    await expect.poll(() => status().innerText()).toContain('The field model listens.');
    // Whatever is heard from here on was heard by the field model: the other one is gone.
    await page.route(`**/${builtModel.fileName}`, (route) => route.abort());
    await page.goto(`${server.url}#/new`);
    await page.reload();
    await loseModelFiles(page, builtModel.sha256);
    await page.getByRole('button', { name: 'Begin' }).click();
    expect(await sayTheSymptom()).toBe(SAID);
  });

  it('is not chosen when it arrives altered: the sentence says so, and what listens', {
    timeout: SLOW_MS,
  }, async () => {
    await page.route(`**/${field.fileName}`, async (route) => {
      const whole = await (await route.fetch()).body();
      await route.fulfill({ body: Buffer.concat([whole.subarray(0, -9), Buffer.alloc(9)]) });
    });
    await openSettings();
    await fieldButton().click({ timeout: 120_000 });
    await expect
      .poll(() => status().innerText(), { timeout: 60_000 })
      .toMatch(/^The field model is not in use\. .* The bundled speech model listens instead\.$/);
    expect(await fieldButton().getAttribute('aria-pressed')).toBe('false');
  });

  it('gives way to the bundled one, with a sentence, when the tablet lost it', {
    timeout: SLOW_MS,
  }, async () => {
    await giveSpokenMicrophone(page, { roomDbfs: -60 });
    await chooseFieldModel();
    await page.route(`**/${field.fileName}`, (route) => route.abort());
    await page.goto(`${server.url}#/new`);
    await loseModelFiles(page, field.sha256);
    await page.getByRole('button', { name: 'Begin' }).click();
    await expect
      .poll(() => page.locator('.heard-line').innerText(), { timeout: 60_000 })
      .toContain('The bundled speech model listens instead.');
    expect(await sayTheSymptom()).toBe(SAID);
    expect(await page.locator('.heard-line').innerText()).not.toContain('bundled');
  });

  it('frees its room when the bundled one is chosen again', { timeout: SLOW_MS }, async () => {
    await chooseFieldModel();
    await page.getByRole('button', { name: /^Bundled: \d+ MB$/ }).click();
    await expect.poll(() => status().innerText()).toBe('The bundled speech model listens.');
    const kept = await page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const request = indexedDB.open('/vosk', 21);
          request.onsuccess = () => {
            const keys = request.result.transaction('FILE_DATA').objectStore('FILE_DATA').getAllKeys();
            keys.onsuccess = () => resolve(keys.result.map(String));
          };
        }),
    );
    expect(kept.some((key) => key.includes(builtModel.sha256))).toBe(true);
    expect(kept.filter((key) => key.includes(field.sha256))).toEqual([]);
  });
});
