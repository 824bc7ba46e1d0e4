/**
 * Prints how fast the ears are in headless Chromium: the model's load, and for phrases said into a room with an engine, the
 * time from a phrase's end to the decision that it has ended, from there to the utterance, and how many were right.
 * Run by hand: npx tsx tests/browser/ears-latency.ts [room loudness in dBFS, -60 is quiet, -30 is 10 to 15 dB under the voices]
 */

import { launchChromium } from './chromium.ts';
import type { EarsPage } from './ears-page/main.ts';
import { serveEarsPage } from './ears-server.ts';
import { type ClipVoice, giveSpokenMicrophone, sayInto, spokenClip } from './spoken-microphone.ts';

declare const earsPage: EarsPage;

const LIST = [
  'left_hand_side',
  'right_hand_side',
  'both_knotters',
  'the_key_is_in_my_pocket',
  'the_engine_is_shut_down',
  "i'm_not_sure_about_that",
  'knot_on_the_needle_end',
  'say_that_again',
];
const VOICES: readonly ClipVoice[] = ['slt', 'rms', 'awb'];

const roomDbfs = Number(process.argv[2] ?? -60);
const [server, browser] = await Promise.all([serveEarsPage(), launchChromium()]);
const page = await browser.newPage();
await giveSpokenMicrophone(page, { roomDbfs });
await page.goto(server.url);
await page.waitForFunction(() => 'earsPage' in window);

const startMs = await page.evaluate(async (list) => {
  const times: number[] = [];
  // The first start fetches and unpacks the model, the second finds it stored.
  for (let start = 0; start < 2; start += 1) {
    const ears = earsPage.makeListener();
    const from = performance.now();
    await ears.start();
    times.push(performance.now() - from);
    if (start === 0) ears.stop();
    else ears.listenFor(list, { canGoOn: false });
  }
  await new Promise((resolve) => setTimeout(resolve, 3_000));
  return times;
}, LIST);
console.log(`start to listening: ${startMs.map((ms) => ms.toFixed(0)).join(' ms fetched, ')} ms stored`);

const toDecisionMs: number[] = [];
const toUtteranceMs: number[] = [];
let right = 0;
for (const voice of VOICES) {
  for (const phrase of LIST) {
    const from = await page.evaluate(() => earsPage.events.length);
    const endedAtMs = await sayInto(page, spokenClip(phrase.replaceAll('_', ' '), voice));
    const event = await page
      .waitForFunction(
        (start) =>
          earsPage.events.slice(start).find(({ type }) => type === 'utterance' || type === 'speech.dropped'),
        from,
        { timeout: 10_000 },
      )
      .then((found) => found.jsonValue())
      .catch(() => undefined);
    if (event?.type !== 'utterance') {
      console.log(`  "${phrase}" (${voice}) was not taken for speech`);
      continue;
    }
    toDecisionMs.push(event.utterance.decidedAtMs - endedAtMs);
    toUtteranceMs.push(event.atMs - event.utterance.decidedAtMs);
    if (event.utterance.text === phrase) right += 1;
    else console.log(`  "${phrase}" (${voice}) came back as "${event.utterance.text}"`);
  }
}
console.log(`room ${roomDbfs} dBFS: ${right} of ${LIST.length * VOICES.length} right`);
console.log(`clip's end to decision: ${summary(toDecisionMs)}`);
console.log(`decision to utterance: ${summary(toUtteranceMs)}`);
await browser.close();
await server.close();

/** Middle and 95th percentile of the times, in whole milliseconds. */
function summary(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return `middle ${at(0.5)?.toFixed(0)} ms, 95 % under ${at(0.95)?.toFixed(0)} ms (${times.length} tries)`;
}
