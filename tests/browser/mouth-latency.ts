/**
 * Prints how long the mouth takes from being asked to the first sound, in headless Chromium: first time, and once the
 * words were prepared. Run by hand: npx tsx tests/browser/mouth-latency.ts
 */
import { type Say, sayMeasure } from '../../grammar/say.ts';
import { launchChromium } from './chromium.ts';
import type { MouthPage } from './mouth-page/main.ts';
import { serveMouthPage } from './mouth-server.ts';

declare const mouthPage: MouthPage;

const TRIES = 20;

/** Middle and 95th percentile of the times, in whole milliseconds. */
function summary(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]?.toFixed(0);
  return `middle ${at(0.5)} ms, 95 % under ${at(0.95)} ms (${times.length} tries)`;
}

const says: readonly Say[] = Array.from({ length: TRIES }, (_, index) =>
  sayMeasure(101 + 37 * index, 'newton'),
);
const [server, browser] = await Promise.all([serveMouthPage(), launchChromium()]);
const page = await browser.newPage();
await page.goto(server.url);
await page.waitForFunction(() => 'mouthPage' in window);
const times = await page.evaluate(async (says) => {
  const { mouth, context, firstSoundMs } = await mouthPage.openMouth();
  await context.resume();
  const cold: number[] = [];
  const prepared: number[] = [];
  for (const say of says) cold.push(await firstSoundMs(say));
  for (const say of says) {
    mouth.prepare([say]);
    await new Promise((resolve) => setTimeout(resolve, 300));
    prepared.push(await firstSoundMs(say));
  }
  return { cold, prepared, outputLatencyMs: 1000 * context.outputLatency };
}, says);
console.log(`From asking to first sound, without preparing: ${summary(times.cold)}`);
console.log(`From asking to first sound, prepared:          ${summary(times.prepared)}`);
console.log(`Of that, the browser's own output takes ${times.outputLatencyMs.toFixed(0)} ms.`);
await Promise.all([browser.close(), server.close()]);
