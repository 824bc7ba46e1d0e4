import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EarsFailure } from '../../audio/ears/failures.ts';
import { launchChromium } from './chromium.ts';
import type { EarsPage } from './ears-page/main.ts';
import { serveEarsPage } from './ears-server.ts';
import type { ServedBuild } from './serve-build.ts';
import { giveSpokenMicrophone } from './spoken-microphone.ts';
import { toneWav } from './tone-wav.ts';

declare global {
  interface Window {
    readonly earsPage: EarsPage;
  }
}

const SLOW_MS = 120_000;
const TONE_HZ = 1_000;
const TONE_AMPLITUDE = 0.25;

let server: ServedBuild;
const browsers: Browser[] = [];
const folder = mkdtempSync(join(tmpdir(), 'tone-'));

beforeAll(async () => {
  server = await serveEarsPage();
}, SLOW_MS);

afterAll(async () => {
  for (const browser of browsers) await browser.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}, SLOW_MS);

async function open(
  switches: readonly string[],
  url = server.url,
  before?: (page: Page) => Promise<void>,
): Promise<Page> {
  const browser = await launchChromium(switches);
  browsers.push(browser);
  const page = await browser.newPage();
  await before?.(page);
  await page.goto(url);
  await page.waitForFunction(() => 'earsPage' in window);
  return page;
}

/** Opens the microphone and returns the failure, if that is what comes back. */
function failureOn(page: Page): Promise<EarsFailure | undefined> {
  return page.evaluate(async () => {
    const opened = await window.earsPage.openMicrophone(() => {});
    return opened.ok ? undefined : opened.failure;
  });
}

/** The browser's pretended device drops sound while the machine is busy, which a real one does not. */
const PATIENT = { timeout: SLOW_MS, retry: 2 };

describe('the microphone in a real browser', () => {
  // Chromium plays the file as its capture device: real getUserMedia, real worklet, real device rate.
  it(
    'captures a tone from a device at another rate as 16 kHz sound of the same pitch and loudness',
    PATIENT,
    async () => {
      const file = join(folder, 'tone.wav');
      writeFileSync(file, toneWav(TONE_HZ, 10, 44_100, TONE_AMPLITUDE));
      const page = await open([
        '--use-fake-ui-for-media-stream',
        '--use-fake-device-for-media-stream',
        `--use-file-for-fake-audio-capture=${file}`,
      ]);
      const heard = await page.evaluate(async () => {
        const samples: number[] = [];
        const opened = await window.earsPage.openMicrophone((event) => {
          if (event.type === 'block') samples.push(...event.block.heard);
        });
        if (!opened.ok) throw new Error(window.earsPage.describe(opened.failure));
        await new Promise((resolve) => setTimeout(resolve, 3_000));
        opened.microphone.stop();
        const { deviceRateHz, isAltered } = opened.microphone;
        return { samples, deviceRateHz, isAltered };
      });
      expect(heard.isAltered).toBe(false);
      expect(heard.deviceRateHz).not.toBe(16_000);
      // A settled stretch well inside the stream.
      const tone = heard.samples.slice(16_000, 32_000);
      expect(tone).toHaveLength(16_000);
      const risings = tone.filter((sample, i) => i > 0 && (tone[i - 1] as number) < 0 && sample >= 0).length;
      expect(Math.abs(risings - TONE_HZ)).toBeLessThanOrEqual(2);
      const rms = Math.sqrt(tone.reduce((sum, sample) => sum + sample * sample, 0) / tone.length);
      // The root mean square of a sine is its peak over the root of two; half a decibel for the device's own path.
      expect(Math.abs(20 * Math.log10(rms / (TONE_AMPLITUDE / Math.SQRT2)))).toBeLessThan(0.5);
    },
  );

  it(
    'says that it was refused',
    async () => {
      const page = await open(['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream=deny']);
      expect(await failureOn(page)).toEqual({ kind: 'microphone-refused' });
    },
    SLOW_MS,
  );

  it(
    'says that there is none',
    async () => {
      const page = await open(['--use-fake-ui-for-media-stream'], server.url, async (fresh) => {
        // A machine that tests may have a microphone; this one then has none either.
        await fresh.addInitScript(() => {
          const { mediaDevices } = navigator;
          const real = mediaDevices.getUserMedia.bind(mediaDevices);
          mediaDevices.getUserMedia = (wanted) =>
            real({ ...wanted, audio: { deviceId: { exact: 'none of this name' } } });
        });
      });
      expect(await failureOn(page)).toEqual({ kind: 'no-microphone' });
    },
    SLOW_MS,
  );

  it(
    'says that the address is not secure',
    async () => {
      const url = server.url.replace('127.0.0.1', 'shed.test');
      const page = await open(['--host-resolver-rules=MAP shed.test 127.0.0.1'], url);
      expect(await failureOn(page)).toEqual({ kind: 'insecure-origin' });
    },
    SLOW_MS,
  );

  it(
    'notices that it is muted, that it lives again, and that it is unplugged',
    async () => {
      const page = await open([], server.url, (fresh) => giveSpokenMicrophone(fresh, { roomDbfs: -50 }));
      const events = await page.evaluate(async () => {
        const told: string[] = [];
        const opened = await window.earsPage.openMicrophone((event) => {
          if (event.type === 'failed') told.push(event.failure.kind);
          if (event.type === 'recovered') told.push('recovered');
        });
        if (!opened.ok) throw new Error(window.earsPage.describe(opened.failure));
        const until = async (count: number): Promise<void> => {
          while (told.length < count) await new Promise((resolve) => setTimeout(resolve, 50));
        };
        await new Promise((resolve) => setTimeout(resolve, 500));
        window.spokenMicrophone.mute(true);
        await until(1);
        window.spokenMicrophone.mute(false);
        await until(2);
        window.spokenMicrophone.unplug();
        await until(3);
        opened.microphone.stop();
        return told;
      });
      expect(events).toEqual(['microphone-muted', 'recovered', 'microphone-unplugged']);
    },
    SLOW_MS,
  );
});
