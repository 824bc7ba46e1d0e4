import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { rmsDbfs } from '../../audio/ears/level.ts';
import { sayHearing } from '../../flows/hearing-policy.ts';
import { LINES } from '../../flows/lines.ts';
import { SAFE_STOP_STEPS } from '../../flows/lockout/steps.ts';
import type { HearingGrade } from '../../grammar/hearing-grade.ts';
import { taughtForm } from '../../grammar/lexicon.ts';
import { MARKS } from '../../src/session/voice-link.ts';
import { readWav } from '../speech/wav.ts';
import { HOLDER_SET_LOOSE } from './scenario.ts';
import { HURRIED_MOUTH, sayInto, setRoom, spokenClip } from './spoken-microphone.ts';
import { openTalkingApp, type TalkingApp } from './talking-app.ts';

const PATIENCE_MS = 300_000;
const QUIET_DBFS = -60;

let app: TalkingApp | undefined;
afterEach(async () => {
  await app?.close();
  app = undefined;
});

function page() {
  if (!app) throw new Error('The app is not open.');
  return app.page;
}

const question = async () => (await page().locator('h1.question').textContent()) ?? '';
const notices = async () => (await page().locator('.heard-line').textContent()) ?? '';

async function untilTurn(turn: 'listening' | 'resting'): Promise<void> {
  await page().waitForSelector(`[data-turn="${turn}"]`, { state: 'attached', timeout: 90_000 });
}

async function untilHearing(grade: HearingGrade): Promise<void> {
  await page().waitForSelector(`.hearing-sign[data-grade="${grade}"]`, { timeout: 60_000 });
}

async function untilQuestionIsNot(before: string): Promise<void> {
  await expect.poll(question, { timeout: 30_000 }).not.toBe(before);
}

/** Says a phrase until something is true, as a person would: a few times, each when the app listens. */
async function sayUntil(phrase: string, isSo: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 4; tries += 1) {
    await untilTurn('listening');
    await sayInto(page(), spokenClip(phrase));
    for (let waits = 0; waits < 20; waits += 1) {
      if (await isSo()) return;
      await page().waitForTimeout(200);
    }
  }
  throw new Error(`Nothing came of "${phrase}": ${await notices()}`);
}

/** Loudness of a clip, decibels of full scale. */
function loudnessOf(clip: Buffer): number {
  const folder = mkdtempSync(join(tmpdir(), 'clip-'));
  const file = join(folder, 'clip.wav');
  try {
    writeFileSync(file, clip);
    return rmsDbfs(readWav(file).samples);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('in noise that rises and falls', () => {
  it(
    'says that it is hard to hear, confirms nothing by voice, goes on by button, hears stop, and comes back',
    async () => {
      app = await openTalkingApp({ roomDbfs: QUIET_DBFS, mouthSpeed: HURRIED_MOUTH });
      const [first, second] = SAFE_STOP_STEPS;
      const confirmation = taughtForm(first.confirmedBy);
      await sayUntil(HOLDER_SET_LOOSE.opening, async () => (await question()).includes(first.instruct));
      const voiceDbfs = loudnessOf(spokenClip(confirmation));

      // Hard to hear: it says so by itself, and a confirmation that it understands is still not taken.
      await untilTurn('listening');
      await setRoom(page(), voiceDbfs - 6, 4);
      await untilHearing('poor');
      await expect.poll(notices).toContain(sayHearing('good', 'poor', 'automatic')[0]);
      await sayUntil(confirmation, async () => (await notices()).includes(LINES.confirmByButton));
      const asked = await question();
      await page().getByRole('button', { name: confirmation }).click();
      await untilQuestionIsNot(asked);
      expect(await question()).toContain(second.instruct);

      // Too loud: the voice is off, the buttons go on.
      await setRoom(page(), voiceDbfs + 3, 2);
      await untilHearing('too loud');
      await untilTurn('resting');
      await expect.poll(notices).toContain(sayHearing('poor', 'too loud', 'automatic')[0]);
      const askedLoudly = await question();
      await page()
        .getByRole('button', { name: taughtForm(second.confirmedBy) })
        .click();
      await untilQuestionIsNot(askedLoudly);

      // Quieter: the voice is back, and says so; then everything is as it was.
      await untilTurn('resting');
      await setRoom(page(), QUIET_DBFS, 2);
      await untilTurn('listening');
      await expect.poll(notices).toContain(sayHearing('too loud', 'poor', 'automatic')[0]);
      await page().waitForTimeout(12_000);
      await page().getByRole('button', { name: 'Say again' }).click();
      await untilHearing('good');
      await sayUntil('stop everything now', async () => (await question()).includes(LINES.voidedAsk));
    },
    PATIENCE_MS,
  );
});

describe('with its own voice in the microphone', () => {
  it(
    'never hears itself: through question after question nothing is taken for an answer',
    async () => {
      app = await openTalkingApp({ roomDbfs: QUIET_DBFS, ownVoiceDb: -6 });
      for (let asked = 0; asked < 4; asked += 1) {
        await untilTurn('listening');
        await page().waitForTimeout(2_000);
        const before = await question();
        expect(await page().locator('.heard-line q').count()).toBe(0);
        await page().locator('.answer-tags .tag').first().click();
        await untilQuestionIsNot(before);
      }
      const decided = await page().evaluate(
        (mark) => performance.getEntriesByName(mark).length,
        MARKS.decided,
      );
      expect(decided).toBe(0);
      // And yet its ears are open: a person is heard.
      await untilTurn('listening');
      await sayInto(page(), spokenClip('stop everything now'));
      await expect.poll(question, { timeout: 30_000 }).toContain(LINES.voidedAsk);
      expect(await page().evaluate(() => window.spokenMicrophone.loudestOwnVoiceDbfs())).toBeGreaterThan(-35);
    },
    PATIENCE_MS,
  );
});
