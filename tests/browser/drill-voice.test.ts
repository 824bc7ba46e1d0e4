import { afterEach, expect, it } from 'vitest';
import { trapById } from '../../flows/drill/hazards.ts';
import { DEBRIEF_LINES, DRILL_LINES } from '../../flows/drill/lines.ts';
import { traineeOf } from './drill-person.ts';
import { talkThrough } from './person.ts';
import { HURRIED_MOUTH } from './spoken-microphone.ts';
import { openTalkingApp, type TalkingApp } from './talking-app.ts';

let app: TalkingApp | undefined;
afterEach(async () => {
  await app?.close();
  app = undefined;
});

/** A helper keeps the key in this one, when it is asked for. */
const NUMBER = { spoken: 'ninety five', written: 95 };

it('a drill is set up, ended by a key in the wrong pocket and debriefed, all by voice, and nothing of it is kept', async () => {
  app = await openTalkingApp({ roomDbfs: -55, begin: 'drill', mouthSpeed: HURRIED_MOUTH });
  const { page } = app;
  const learnt = () => page.evaluate(() => localStorage.getItem('knotwright.learnt'));
  const learntBefore = await learnt();
  const trainee = traineeOf({ level: 1, number: NUMBER.spoken, confirmsBlindly: true });
  const { exchanges, closed } = await talkThrough(page, trainee, ['slt', 'rms'], { overAt: 'Debrief' });
  expect(closed).toBe(true);
  const asked = exchanges.map((exchange) => exchange.asked);
  const { happens, lesson } = trapById('keyWithHelper');
  const inOrder = [DRILL_LINES.theyTell, happens, lesson, DEBRIEF_LINES.fatal, DEBRIEF_LINES.noPoints];
  const found = inOrder.map((line) => asked.findIndex((question) => question.includes(line)));
  expect(found.every((at) => at >= 0)).toBe(true);
  expect(found).toEqual([...found].sort((a, b) => a - b));
  expect(await page.locator('main').innerText()).toContain(`Drill ${NUMBER.written}, level 1`);
  expect(await page.locator('main').innerText()).toContain('Stopped by a fatal error');

  expect(await learnt()).toBe(learntBefore);
  await page.evaluate(() => {
    location.hash = '#/records';
  });
  await page.getByRole('heading', { name: 'Records' }).waitFor();
  expect(await page.locator('.job-list a').count()).toBe(0);
}, 300_000);
