/**
 * `npm run demo:drill`: one drill of the first level by voice alone, from its set-up to the written debrief, through
 * the real microphone path, recogniser and charts of the built app in a headless Chromium. Every turn is printed as it
 * happens, then the debrief. Exits 1 if the drill did not get there, or was not passed.
 */

import { traineeOf } from './drill-person.ts';
import { type Exchange, talkThrough } from './person.ts';
import type { ClipVoice } from './spoken-microphone.ts';
import { openTalkingApp } from './talking-app.ts';

const VOICES: readonly ClipVoice[] = ['slt', 'rms'];
/** A drill of the first level that needs no lockout, so that it is short. */
const GIVEN = { level: 1, number: 'ninety eight' } as const;

const app = await openTalkingApp({ roomDbfs: -55, begin: 'drill' });
try {
  const beganMs = Date.now();
  const { exchanges, closed } = await talkThrough(app.page, traineeOf(GIVEN), VOICES, {
    tell: print,
    overAt: 'Debrief',
  });
  if (closed) console.log(`\n${await app.page.locator('main').innerText()}\n`);
  const understood = exchanges.filter(({ wentOn }) => wentOn).length;
  console.log(
    `${understood} of ${exchanges.length} answers understood at the first saying, ${VOICES.length} voices, ` +
      `${Math.round((Date.now() - beganMs) / 1000)} s.`,
  );
  const isPassed = closed && (await app.page.getByText(', passed').count()) > 0;
  console.log(isPassed ? 'The drill was passed by voice.' : 'The drill was NOT passed.');
  process.exitCode = isPassed ? 0 : 1;
} finally {
  await app.close();
}

function print({ safety, asked, said, voice, heard, wentOn }: Exchange): void {
  console.log(`\n[${safety}]`);
  console.log(`  asked       ${asked}`);
  console.log(`  said (${voice})  ${said}`);
  console.log(`  heard       ${heard || '(nothing)'}${wentOn ? '' : '  (not taken)'}`);
}
