import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LogEntry } from '../../src/records/log-entry.ts';
import { byVoice, checkAsked, firstAnswer, toldJob } from '../src/report/told-job.ts';
import { findChromium } from './chromium.ts';
import type { RecordsPage } from './records-page/main.tsx';
import { type RecordsServer, serveRecordsPage } from './records-server.ts';

declare const recordsPage: RecordsPage;

/** More than the little room a browser always finds. */
const LONG_NOTE = 'what was found '.repeat(200_000);

let server: RecordsServer;
let folder: string;
let context: BrowserContext;

beforeAll(async () => {
  server = await serveRecordsPage();
}, 60_000);

afterAll(() => server?.close());

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'records-'));
  context = await openBrowser();
}, 60_000);

afterEach(async () => {
  await context.close().catch(() => undefined);
  await rm(folder, { recursive: true, force: true });
});

describe('records in Chromium', { timeout: 60_000 }, () => {
  it('hold every acknowledged line when the browser dies in the middle of writing', async () => {
    const page = await openPage();
    const acknowledged = await page.evaluate(async () => {
      const { log, writeOn } = await recordsPage.startJob();
      for (let line = 0; line < 40; line++) await writeOn(`note ${line}`);
      // These are on their way when the browser dies.
      for (let line = 40; line < 200; line++) void writeOn(`note ${line}`);
      return log.entries.length - log.unsaved.length;
    });
    expect(acknowledged).toBeGreaterThanOrEqual(41);
    await crash(page);
    context = await openBrowser();
    const kept = await (await openPage()).evaluate(() => recordsPage.everyLine());
    expect(kept.length).toBeGreaterThanOrEqual(acknowledged);
    expect(kept.map(({ seq }) => seq)).toEqual(kept.map((_, index) => index));
  });

  it('say that the disk is full, hold what is unsaved, and keep it once there is room', async () => {
    const page = await openPage();
    const quota = await context.newCDPSession(page);
    const origin = new URL(server.url).origin;
    // Before the store is opened: Chromium remembers for a while how much room there was.
    await quota.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 150_000 });
    await page.evaluate(() => recordsPage.startJob());
    const refused = await page.evaluate((text) => recordsPage.writeOn(text), LONG_NOTE);
    expect(refused).toMatchObject({ kept: false, trouble: { kind: 'full' } });
    await quota.send('Storage.overrideQuotaForOrigin', { origin });
    expect(await page.evaluate(() => recordsPage.retry())).toMatchObject({ kept: true });
    const [, note] = await page.evaluate(() => recordsPage.everyLine());
    expect(note?.event).toEqual({ type: 'record.note', text: LONG_NOTE });
  });

  it('belong to one tab at a time', async () => {
    const first = await openPage();
    await first.evaluate(() => recordsPage.startJob());
    const second = await openPage();
    expect(await second.evaluate(() => recordsPage.tryToOpen())).toBe('otherTab');
    await first.close();
    await expect.poll(() => second.evaluate(() => recordsPage.tryToOpen())).toBe('opened');
  });

  it('are refused in plain words where the browser has no store', async () => {
    const page = await context.newPage();
    await page.addInitScript(() =>
      Object.defineProperty(window, 'indexedDB', { value: undefined, configurable: true }),
    );
    await page.goto(server.url);
    await page.waitForFunction(() => 'recordsPage' in window);
    expect(await page.evaluate(() => recordsPage.tryToOpen())).toBe('noStorage');
  });

  it('write each line so that the browser flushes it', async () => {
    const page = await openPage();
    const durabilities = await page.evaluate(async () => {
      const seen: string[] = [];
      const original = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (stores, mode, options) {
        const transaction = original.call(this, stores, mode, options);
        if (mode === 'readwrite') seen.push(transaction.durability);
        return transaction;
      };
      await recordsPage.startJob();
      await recordsPage.writeOn('a note');
      return seen;
    });
    expect(durabilities.length).toBeGreaterThanOrEqual(2);
    expect(new Set(durabilities)).toEqual(new Set(['strict']));
  });
});

describe('the sheets on paper', { timeout: 60_000 }, () => {
  for (const format of ['A4', 'Letter']) {
    it(`hold a long job on ${format}, the hand-over on one page`, async () => {
      const page = await openPage();
      const entries = longJob();
      await page.evaluate((log) => recordsPage.show('handOver', log), entries);
      expect(pagesIn(await page.pdf({ format }))).toBe(1);
      expect(await page.innerText('body')).toContain('Do not trust the lockout recorded here.');
      await page.evaluate((log) => recordsPage.show('jobCard', log), entries);
      expect(pagesIn(await page.pdf({ format }))).toBeGreaterThan(1);
      expect(await page.innerText('body')).toContain('it just lets the string go');
    });
  }

  it('are not wider than the narrower paper', async () => {
    const page = await openPage();
    await page.emulateMedia({ media: 'print' });
    // A4 less its margins, at 96 dots an inch.
    await page.setViewportSize({ width: Math.floor(((210 - 26) / 25.4) * 96), height: 900 });
    for (const sheet of ['handOver', 'jobCard'] as const) {
      await page.evaluate(([which, log]) => recordsPage.show(which, log), [sheet, longJob()] as const);
      const [needs, has] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        document.documentElement.clientWidth,
      ]);
      expect(needs, sheet).toBeLessThanOrEqual(has ?? 0);
    }
  });

  it('say in words what their drawings show', async () => {
    const page = await openPage();
    await page.evaluate((log) => recordsPage.show('jobCard', log), mendedJob());
    const texts = await page
      .locator('svg[role=img]')
      .evaluateAll((drawings) => drawings.map((each) => each.getAttribute('aria-label') ?? ''));
    expect(texts).toHaveLength(2);
    expect(texts[0]).toMatch(/^Before: 2 of 10 ties missed.*After: 0 of 14 missed/);
    expect(texts[1]).toMatch(/at the start, .* after \d+ answers/);
  });
});

function openBrowser(): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath: findChromium(),
    headless: true,
    args: ['--no-sandbox'],
  });
}

async function openPage(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(server.url);
  await page.waitForFunction(() => 'recordsPage' in window);
  return page;
}

/** Ends the browser at once, as a battery that dies would: nothing is closed in good order. */
async function crash(page: Page): Promise<void> {
  const session = await context.newCDPSession(page);
  const isGone = new Promise((resolve) => context.once('close', resolve));
  await Promise.race([session.send('Browser.crash').catch(() => undefined), isGone]);
  await isGone;
}

/** The pages of a PDF, by the page objects in it. */
function pagesIn(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

function mendedJob(): LogEntry[] {
  return toldJob((prompt) =>
    prompt.state === 'job.inquiry.proving.askingRate'
      ? byVoice('value.missRate', { missCount: { misses: 2, bales: 10 } })
      : firstAnswer(prompt),
  );
}

/** Everything found at fault, every repair in vain, until there is nothing left to check. */
function longJob(): LogEntry[] {
  return toldJob((prompt, told) => {
    if (told > 250) return undefined;
    if (prompt.expecting.meanings.includes('tie.missed')) return byVoice('tie.missed');
    const check = checkAsked(prompt);
    if (check?.measure && prompt.expecting.value) {
      return byVoice('value.measured', { measurement: check.measure.plausible.low });
    }
    return firstAnswer(prompt);
  });
}
