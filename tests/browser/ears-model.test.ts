import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtModel } from '../../audio/command-model/built.ts';
import type { EarsFailure } from '../../audio/ears/failures.ts';
import { launchChromium } from './chromium.ts';
import type { EarsPage } from './ears-page/main.ts';
import { serveEarsPage } from './ears-server.ts';
import { loseModelFiles } from './recogniser-store.ts';
import type { ServedBuild } from './serve-build.ts';

declare global {
  interface Window {
    readonly earsPage: EarsPage;
  }
}

const SLOW_MS = 240_000;

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

const archive = readFileSync(join(import.meta.dirname, '../../public/model', builtModel.fileName));

/** A fresh page, so with an empty store, and every request for the archive counted. */
async function openPage(body?: Buffer, status = 200): Promise<{ page: Page; requests: () => number }> {
  const page = await (await browser.newContext()).newPage();
  let count = 0;
  await page.route(`**/${builtModel.fileName}`, (route) => {
    count += 1;
    return body === undefined ? route.continue() : route.fulfill({ status, body });
  });
  await page.goto(server.url);
  return { page, requests: () => count };
}

/** Loads the recogniser and lets it go again; the failure, if that is what comes. */
function loadOn(page: Page): Promise<EarsFailure | undefined> {
  return page.evaluate(async () => {
    const { model, loadRecogniser } = window.earsPage;
    const loaded = await loadRecogniser({ models: [model], onDeath: () => {} });
    if (loaded.ok) loaded.recogniser.close();
    return loaded.ok ? undefined : loaded.failure;
  });
}

describe('the model in a real browser', () => {
  it(
    'is fetched once and then loads without a network',
    async () => {
      const { page, requests } = await openPage();
      expect(await loadOn(page)).toBeUndefined();
      await page.context().setOffline(true);
      expect(await loadOn(page)).toBeUndefined();
      expect(requests()).toBe(1);
      await page.context().close();
    },
    SLOW_MS,
  );

  it.each<[string, Buffer, number, EarsFailure]>([
    [
      'cut short',
      archive.subarray(0, 100_000),
      200,
      { kind: 'model-cut-short', gotBytes: 100_000, wantedBytes: archive.length },
    ],
    [
      'altered by one bit',
      Buffer.from(archive.map((byte, i) => (i === 1_000_000 ? byte ^ 1 : byte))),
      200,
      { kind: 'model-altered' },
    ],
    ['not there', Buffer.from('no such file'), 404, { kind: 'model-missing', httpStatus: 404 }],
  ])(
    'is refused when it is %s, and loads when the next fetch is whole',
    async (_, body, status, failure) => {
      const { page } = await openPage(body, status);
      expect(await loadOn(page)).toEqual(failure);
      await page.unroute(`**/${builtModel.fileName}`);
      expect(await loadOn(page)).toBeUndefined();
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'says that it is offline when it was never fetched',
    async () => {
      const { page } = await openPage();
      await page.waitForFunction(() => 'earsPage' in window);
      await page.context().setOffline(true);
      expect(await loadOn(page)).toEqual({ kind: 'model-offline' });
      await page.context().close();
    },
    SLOW_MS,
  );

  it(
    'is fetched anew when the browser lost a part of it',
    async () => {
      const { page, requests } = await openPage();
      expect(await loadOn(page)).toBeUndefined();
      await loseModelFiles(page, '/am/final.mdl');
      expect(await loadOn(page)).toBeUndefined();
      expect(requests()).toBe(2);
      await page.context().close();
    },
    SLOW_MS,
  );
});

describe('the recogniser over a long day', () => {
  it(
    'takes no more memory for the fourth minute of sound than for the first',
    async () => {
      const { page } = await openPage();
      const rendererMb = async (): Promise<number> => {
        const session = await browser.newBrowserCDPSession();
        const { processInfo } = await session.send('SystemInfo.getProcessInfo');
        await session.detach();
        const residentMb = processInfo
          .filter(({ type }) => type === 'renderer')
          .map(
            ({ id }) =>
              Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1] ?? 0) / 1_024,
          );
        return Math.max(...residentMb);
      };
      await page.evaluate(async () => {
        const { model, loadRecogniser } = window.earsPage;
        const loaded = await loadRecogniser({ models: [model], onDeath: () => {} });
        if (!loaded.ok) throw new Error(window.earsPage.describe(loaded.failure));
        Object.assign(window, { recogniser: loaded.recogniser });
      });
      /** A minute of utterances, each with a recogniser of its own as the ears use them. */
      const oneMinute = () =>
        page.evaluate(async () => {
          const { recogniser } = window as unknown as { recogniser: EarsPageRecogniser };
          let seed = 1;
          for (let utterance = 0; utterance < 30; utterance += 1) {
            const sound = Float32Array.from({ length: 32_000 }, () => {
              seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
              return (seed / 2 ** 31 - 1) * 0.01;
            });
            const opened = recogniser.open(['left_hand_side', 'both_knotters']);
            if (!opened.ok) throw new Error(window.earsPage.describe(opened.failure));
            const decoded = await opened.session.decode(sound);
            opened.session.dispose();
            if (!decoded.ok) throw new Error(window.earsPage.describe(decoded.failure));
          }
        });
      await oneMinute();
      const afterFirstMb = await rendererMb();
      for (let minute = 2; minute <= 4; minute += 1) await oneMinute();
      // A coarse net, as the collector alone moves this by 10 MB: it holds anything over a fifth of a megabyte an
      // utterance. That every recogniser is removed is counted, not weighed, in ears-listener.test.ts.
      expect((await rendererMb()) - afterFirstMb).toBeLessThan(20);
      await page.context().close();
    },
    SLOW_MS * 2,
  );
});

type EarsPageRecogniser = Extract<
  Awaited<ReturnType<EarsPage['loadRecogniser']>>,
  { ok: true }
>['recogniser'];
