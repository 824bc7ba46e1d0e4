/**
 * Makes the storyboard: pictures of the running app at the moments of one job, for the manual. Run it with
 * `npx tsx tests/browser/screens-storyboard.ts` after changing a screen; it writes public/storyboard.
 */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { launchChromium } from './chromium.ts';
import { serveScreensPage } from './screens-server.ts';
import { beginJob, DRILL_MOMENTS, MOMENTS, openApp, settled } from './screens-walk.ts';

const FOLDER = join(import.meta.dirname, '../../public/storyboard');
const TABLET = { width: 1280, height: 800 };

const server = await serveScreensPage();
const browser = await launchChromium();
try {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  const context = await browser.newContext({ viewport: TABLET, reducedMotion: 'reduce' });
  const page = await openApp(context, server.url);
  const shots = [
    { name: 'start', reach: async () => {} },
    { name: 'new job', reach: beginJob },
    ...MOMENTS,
    ...DRILL_MOMENTS,
  ];
  for (const [at, { name, reach }] of shots.entries()) {
    // The form of a new job is pictured on its way to the job itself.
    if (name === 'new job') await page.goto(`${server.url}#/new`);
    else await reach(page);
    await settled(page);
    const file = `${String(at + 1).padStart(2, '0')}-${name.replaceAll(' ', '-')}.jpg`;
    await page.screenshot({ path: join(FOLDER, file), type: 'jpeg', quality: 80 });
    if (name === 'new job') await reach(page);
  }
  console.log(`${shots.length} pictures in ${FOLDER}.`);
} finally {
  await browser.close();
  await server.close();
}
