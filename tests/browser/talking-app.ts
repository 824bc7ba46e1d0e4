import type { Page } from 'playwright-core';
import { MARKS } from '../../src/session/voice-link.ts';
import { serveApp } from './app-server.ts';
import { launchChromium } from './chromium.ts';
import { giveSpokenMicrophone } from './spoken-microphone.ts';

/** The app in a Chromium whose microphone says what the caller wants, with a job or a drill begun. */
export interface TalkingApp {
  readonly page: Page;
  readonly buildFolder: string;
  /** The text of the job's printed card. */
  jobCard(): Promise<string>;
  timings(): Promise<Timings>;
  close(): Promise<void>;
}

/** Milliseconds. */
export interface Timings {
  readonly modelLoadMs: number;
  /** From opening the job's page to ears that hear. */
  readonly toListeningMs: number;
  /** Median from the decision that speech has ended to the first sound of the reply. */
  readonly decisionToReplyMs: number;
}

export interface TalkingAppOptions {
  /** Loudness of the room's noise, decibels of full scale. */
  readonly roomDbfs: number;
  /** How much of its own voice the app hears, decibels; nothing by default. */
  readonly ownVoiceDb?: number;
  readonly microphone?: 'refused';
  /** What is wrong with the speech model on its way to the page. */
  readonly model?: 'cut short' | 'altered';
  /** What is begun: a job, or a drill that is set up by voice. */
  readonly begin?: 'job' | 'drill';
  /** How many times as fast as it should it speaks. */
  readonly mouthSpeed?: number;
  /** A browser that gives the page no place to store anything. */
  readonly storage?: 'none';
}

export async function openTalkingApp(options: TalkingAppOptions): Promise<TalkingApp> {
  const server = await serveApp();
  const browser = await launchChromium();
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    // What it fetches does not come by where a test spoils it.
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await giveSpokenMicrophone(page, options);
  await spoil(page, options);
  const isDrill = options.begin === 'drill';
  await page.goto(`${server.url}#/${isDrill ? 'drill' : 'new'}`);
  await page.getByRole('button', { name: isDrill ? 'Set it up by voice' : 'Begin' }).click();
  const beganMs = await page.evaluate(() => performance.now());
  return {
    page,
    buildFolder: server.folder,
    async jobCard() {
      await page.evaluate(() => {
        location.hash = location.hash.replace('#/job/', '#/record/');
      });
      const card = page.locator('article.paper');
      await card.waitFor();
      return card.innerText();
    },
    async timings() {
      const marks = await page.evaluate(() =>
        (performance.getEntriesByType('mark') as PerformanceMark[]).map(({ name, startTime, detail }) => ({
          name,
          startTime,
          detail: (detail ?? {}) as { modelLoadMs?: number },
        })),
      );
      const ready = marks.find(({ name }) => name === MARKS.ready);
      const replies = marks.filter(({ name }) => name === MARKS.replyBegan);
      const waits = marks
        .filter(({ name }) => name === MARKS.decided)
        .flatMap(({ startTime: decided }) => {
          const reply = replies.find(({ startTime }) => startTime > decided);
          return reply ? [reply.startTime - decided] : [];
        });
      return {
        modelLoadMs: Math.round(ready?.detail.modelLoadMs ?? Number.NaN),
        toListeningMs: Math.round((ready?.startTime ?? Number.NaN) - beganMs),
        decisionToReplyMs: Math.round(median(waits)),
      };
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

async function spoil(page: Page, { microphone, model, storage }: TalkingAppOptions): Promise<void> {
  if (microphone === 'refused') {
    await page.addInitScript(() => {
      navigator.mediaDevices.getUserMedia = () =>
        Promise.reject(new DOMException('refused', 'NotAllowedError'));
    });
  }
  if (storage === 'none') {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('storage is off', 'SecurityError');
      };
    });
  }
  if (model) {
    await page.route('**/*.model', async (route) => {
      const whole = await (await route.fetch()).body();
      const body =
        model === 'altered'
          ? Buffer.concat([whole.subarray(0, -9), Buffer.alloc(9)])
          : whole.subarray(0, 99_999);
      await route.fulfill({ body });
    });
  }
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
