import { afterEach, expect, it } from 'vitest';
import { DRILL_LINES } from '../../flows/drill/lines.ts';
import { carefulIn } from './drill-person.ts';
import { talkThrough } from './person.ts';
import { openTalkingApp, type TalkingApp } from './talking-app.ts';

let app: TalkingApp | undefined;
afterEach(async () => {
  await app?.close();
  app = undefined;
});

it('a drill is set up and begun by voice, by the number a trainer gives, and nothing of it is kept', async () => {
  app = await openTalkingApp({ roomDbfs: -55, begin: 'drill' });
  const { page } = app;
  const { exchanges } = await talkThrough(
    page,
    carefulIn({ level: 1, number: 'ninety eight' }),
    ['slt', 'rms'],
    { stopAt: ({ safety }) => safety === 'Stopping' },
  );
  // The level, the number, its read-back, and what they tell.
  expect(exchanges.filter(({ wentOn }) => wentOn)).toHaveLength(4);
  expect(exchanges.at(-1)?.asked).toContain(DRILL_LINES.theyTell);
  expect(await page.locator('.drill-banner').textContent()).toContain('Drill 98, level 1.');

  expect(await page.evaluate(() => Object.keys(localStorage))).not.toContain('knotwright.learnt');
  await page.evaluate(() => {
    location.hash = '#/records';
  });
  await page.getByRole('heading', { name: 'Records' }).waitFor();
  expect(await page.locator('.job-list a').count()).toBe(0);
}, 120_000);
