import { afterEach, describe, expect, it } from 'vitest';
import { LINES } from '../../flows/lines.ts';
import { SAFE_STOP_STEPS } from '../../flows/lockout/steps.ts';
import { talkThrough } from './person.ts';
import { asIn, HOLDER_SET_LOOSE } from './scenario.ts';
import { HURRIED_MOUTH, sayInto, spokenClip } from './spoken-microphone.ts';
import { openTalkingApp, type TalkingApp } from './talking-app.ts';

const PATIENCE_MS = 180_000;

let app: TalkingApp | undefined;
afterEach(async () => {
  await app?.close();
  app = undefined;
});

async function question(): Promise<string> {
  return (await app?.page.locator('h1.question').textContent()) ?? '';
}

async function untilListening(): Promise<void> {
  await app?.page.waitForSelector('[data-turn="listening"]', { state: 'attached', timeout: 90_000 });
}

describe('a job by voice, in a real browser', () => {
  it(
    'goes from the first words to the safe stop, spoken by two voices',
    async () => {
      app = await openTalkingApp({ roomDbfs: -55, mouthSpeed: HURRIED_MOUTH });
      const { exchanges } = await talkThrough(app.page, asIn(HOLDER_SET_LOOSE), ['slt', 'rms'], {
        stopAt: (screen) => screen.safety === 'Eyes only',
      });
      expect(exchanges.filter(({ wentOn }) => wentOn)).toHaveLength(1 + SAFE_STOP_STEPS.length);
      expect(exchanges[0]?.heard).toBe(HOLDER_SET_LOOSE.opening);
    },
    PATIENCE_MS,
  );

  it(
    'is moved by nothing but an answer: not by silence, a knock or other talk',
    async () => {
      app = await openTalkingApp({ roomDbfs: -50, mouthSpeed: HURRIED_MOUTH });
      await untilListening();
      await app.page.waitForTimeout(3_000);
      expect(await question()).toBe(LINES.opening);
      for (const talk of ['did you feed the dog this morning', 'my cousin bought a yellow house']) {
        await untilListening();
        await sayInto(app.page, spokenClip(talk, 'rms'));
        await app.page.waitForTimeout(2_500);
        expect(await question()).toBe(LINES.opening);
      }
    },
    PATIENCE_MS,
  );
});

describe('when voice cannot work', () => {
  it(
    'says so when the microphone is refused, and the buttons go on',
    async () => {
      app = await openTalkingApp({ roomDbfs: -55, microphone: 'refused' });
      await app.page.waitForFunction(() =>
        document.querySelector('.heard-line')?.textContent?.includes('Touch still works'),
      );
      expect(await app.page.locator('.heard-line').textContent()).toContain('microphone');
      await app.page.locator('.answer-tags .tag').first().click();
      await app.page.waitForFunction(
        (opening) => document.querySelector('h1.question')?.textContent !== opening,
        LINES.opening,
      );
    },
    PATIENCE_MS,
  );

  it(
    'says so when the microphone is unplugged, and the buttons go on',
    async () => {
      app = await openTalkingApp({ roomDbfs: -55, mouthSpeed: HURRIED_MOUTH });
      await untilListening();
      await app.page.evaluate(() => window.spokenMicrophone.unplug());
      await app.page.waitForFunction(() =>
        document.querySelector('.heard-line')?.textContent?.includes('Touch still works'),
      );
      await app.page.locator('.answer-tags .tag').first().click();
      await app.page.waitForFunction(
        (opening) => document.querySelector('h1.question')?.textContent !== opening,
        LINES.opening,
      );
    },
    PATIENCE_MS,
  );

  it.each(['cut short', 'altered'] as const)(
    'says so when the speech model is %s, and the buttons go on',
    async (how) => {
      app = await openTalkingApp({ roomDbfs: -55, model: how });
      await app.page.waitForFunction(() =>
        document.querySelector('.heard-line')?.textContent?.includes('Touch still works'),
      );
      await app.page.locator('.answer-tags .tag').first().click();
      await app.page.waitForFunction(
        (opening) => document.querySelector('h1.question')?.textContent !== opening,
        LINES.opening,
      );
    },
    PATIENCE_MS,
  );

  it(
    'says so when nothing can be stored, and the job goes on',
    async () => {
      app = await openTalkingApp({ roomDbfs: -55, storage: 'none' });
      await app.page.locator('.answer-tags .tag').first().click();
      await app.page.waitForFunction(() =>
        document.querySelector('.heard-line')?.textContent?.includes('Nothing can be kept on this tablet'),
      );
      expect(await question()).not.toBe(LINES.opening);
    },
    PATIENCE_MS,
  );
});
