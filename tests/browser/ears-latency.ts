/**
 * Prints how fast the ears are in headless Chromium: how long they take to load, and for phrases said into a room with an
 * engine how long after the pause that ends an utterance its meaning comes, and which part of the ears takes that time.
 * Run by hand: npx tsx tests/browser/ears-latency.ts [room in dBFS [seed]]; -60 is quiet, -30 is 8 dB under the voices
 */

import type { Page } from 'playwright-core';
import { END_AFTER_COMPLETE_MS } from '../../audio/ears/speech-detector.ts';
import { canGoOn, recogniserList, SECOND_LOOK } from '../../grammar/compile.ts';
import { understand } from '../../grammar/understand.ts';
import { ensureDebianPackages } from '../debian.ts';
import { speechLevel } from '../speech/scenes.ts';
import { sampleRate } from '../speech/speak.ts';
import { phraseTrials, type Trial } from '../speech/trials.ts';
import { verdictOn } from '../speech/verdict.ts';
import { voicesFor } from '../speech/voices.ts';
import { wavOf } from '../speech/wav.ts';
import { launchChromium } from './chromium.ts';
import type { EarsPage } from './ears-page/main.ts';
import { serveEarsPage } from './ears-server.ts';
import { giveSpokenMicrophone, sayInto } from './spoken-microphone.ts';

declare const earsPage: EarsPage;

declare global {
  interface Window {
    ears: ReturnType<EarsPage['makeListener']>;
  }
}

const LOADS = 5;
const PHRASES = 30;
const ROOM_BEFORE_MS = 3_000;
const BETWEEN_PHRASES_MS = 500;
const GIVEN_UP_AFTER_MS = 10_000;

/** Where the time goes beyond the pause that ends an utterance, milliseconds. */
interface Times {
  /** To the meaning, from the end that the ears took for it: the sum of the next four. */
  readonly beyond: number;
  readonly toBlock: number;
  readonly frontEnd: number;
  readonly page: number;
  readonly decoding: number;
  /** To the meaning, from the last sample of the clip. */
  readonly afterClip: number;
}

const [roomDbfs = -60, seed = 1] = process.argv.slice(2).map(Number);
ensureDebianPackages();
const [server, browser] = await Promise.all([serveEarsPage(), launchChromium()]);
try {
  const page = await browser.newPage();
  await giveSpokenMicrophone(page, { roomDbfs });
  await page.goto(server.url);
  const fetched = await start(page);
  const stored: Awaited<ReturnType<typeof start>>[] = [];
  for (let load = 0; load < LOADS; load += 1) {
    await page.reload();
    stored.push(await start(page));
  }
  print('start to listening, model fetched', [fetched.startMs]);
  print('start to listening, model stored', pick(stored, 'startMs'));
  print('of that, from the store to a model that decodes (1500 asked)', pick(stored, 'modelMs'));

  const heard: (Times & { readonly isLookedAtTwice: boolean })[] = [];
  let right = 0;
  await page.waitForTimeout(ROOM_BEFORE_MS);
  for (const trial of trials()) {
    const came = await say(page, trial);
    if (came === undefined) {
      console.log(`  "${trial.text}" (${trial.speaker}) was not taken for speech`);
      continue;
    }
    const { text, margin, times } = came;
    if (verdictOn(trial, [understand(text, trial.expecting, margin)]) === 'right') right += 1;
    else console.log(`  "${trial.text}" (${trial.speaker}) came back as "${text}"`);
    heard.push({ ...times, isLookedAtTwice: SECOND_LOOK.at.has(text) });
  }
  console.log(`room ${roomDbfs} dBFS: ${right} of ${PHRASES} right`);
  const twice = heard.filter(({ isLookedAtTwice }) => isLookedAtTwice);
  print(
    `meaning beyond the ${END_AFTER_COMPLETE_MS} ms that end an utterance (150 asked)`,
    pick(heard, 'beyond'),
  );
  print('of that, until the next whole block of sound', pick(heard, 'toBlock'));
  print('of that, the front end', pick(heard, 'frontEnd'));
  print('of that, the page', pick(heard, 'page'));
  print('of that, decoding not done in the pause', pick(heard, 'decoding'));
  print('meaning beyond the pause, of phrases looked at twice', pick(twice, 'beyond'));
  print("meaning beyond the pause, counted from the clip's own end", pick(heard, 'afterClip'));
} finally {
  await browser.close();
  await server.close();
}

/** Phrases that cannot go on, so that the shorter pause ends each of them. */
function trials(): readonly Trial[] {
  return phraseTrials(2 * PHRASES, 'state', voicesFor('tuning'), seed)
    .filter(({ expecting }) => !canGoOn(expecting))
    .slice(0, PHRASES);
}

/** Starts ears of the page's own, as after opening the app. @throws when they do not start */
async function start(page: Page): Promise<{ readonly startMs: number; readonly modelMs: number }> {
  await page.waitForFunction(() => 'earsPage' in window);
  return page.evaluate(async () => {
    window.ears = earsPage.makeListener();
    const from = performance.now();
    const started = await window.ears.start();
    const startMs = performance.now() - from;
    if (!started.ok) throw new Error(earsPage.describe(started.failure));
    const ready = earsPage.events.find(({ type }) => type === 'ready');
    if (ready?.type !== 'ready') throw new Error('The ears started and did not say so.');
    return { startMs, modelMs: ready.loadMs };
  });
}

/**
 * Says a trial's phrase while its state's list is listened for.
 * @returns undefined when it was not taken for speech
 * @throws when the ears fail: a list with a word that the model lacks is never heard
 */
async function say(page: Page, trial: Trial) {
  const from = await page.evaluate((list) => {
    const before = earsPage.events.length;
    window.ears.listenFor(list, { canGoOn: false });
    return before;
  }, recogniserList(trial.expecting));
  await page.waitForTimeout(BETWEEN_PHRASES_MS);
  const clipEndedAtMs = await sayInto(page, clipOf(trial));
  const event = await page.evaluate(
    async ({ from, clipEndedAtMs, patienceMs }) => {
      while (performance.now() - clipEndedAtMs < patienceMs) {
        for (const each of earsPage.events.slice(from)) {
          if (each.type === 'failed') throw new Error(earsPage.describe(each.failure));
          if (each.type === 'utterance') {
            const { decidedAtMs } = each.utterance;
            const block = earsPage.soundBack.findLast(({ backAtMs }) => backAtMs <= decidedAtMs);
            return { ...each, block };
          }
        }
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      return undefined;
    },
    { from, clipEndedAtMs, patienceMs: GIVEN_UP_AFTER_MS },
  );
  if (event === undefined) return undefined;
  const { utterance, atMs, block } = event;
  if (block === undefined) throw new Error('An utterance was decided before any sound came.');
  const { endedAtMs, decidedAtMs, text, margin } = utterance;
  const times: Times = {
    beyond: atMs - endedAtMs - END_AFTER_COMPLETE_MS,
    toBlock: block.cameAtMs - endedAtMs - END_AFTER_COMPLETE_MS,
    frontEnd: block.backAtMs - block.cameAtMs,
    page: decidedAtMs - block.backAtMs,
    decoding: atMs - decidedAtMs,
    afterClip: atMs - clipEndedAtMs - END_AFTER_COMPLETE_MS,
  };
  return { text, margin, times };
}

/** A trial's sound as a file, as loud as in the speech tests. */
function clipOf(trial: Trial): Buffer {
  const sound = trial.sound();
  const power = sound.reduce((sum, sample) => sum + sample * sample, 0) / sound.length;
  return wavOf({ sampleRate, samples: sound.map((sample) => (sample * speechLevel) / Math.sqrt(power)) });
}

function pick<Key extends string>(rows: readonly Record<Key, number>[], key: Key): readonly number[] {
  return rows.map((row) => row[key]);
}

/** Prints median and 90th percentile of times in milliseconds. */
function print(what: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  const figures = `median ${at(0.5)?.toFixed(0)}, 90th percentile ${at(0.9)?.toFixed(0)}`;
  console.log(`${what}: ${times.length === 0 ? 'none' : `${figures} ms (${times.length})`}`);
}
