/**
 * `npm run demo`: one whole job by voice alone. Spoken clips of two and more voices go through the real microphone
 * path, recogniser and charts of the built app in a headless Chromium; every turn is printed as it happens, then
 * the job card and the figures. Exits 1 if the job did not close.
 */

import { type Exchange, talkThrough } from './person.ts';
import { asIn, HOLDER_SET_LOOSE } from './scenario.ts';
import type { ClipVoice } from './spoken-microphone.ts';
import { openTalkingApp } from './talking-app.ts';

const VOICES: readonly ClipVoice[] = ['slt', 'rms', 'awb'];

const app = await openTalkingApp({ roomDbfs: -55 });
try {
  const { exchanges, closed } = await talkThrough(app.page, asIn(HOLDER_SET_LOOSE), VOICES, { tell: print });
  console.log(`\n${await app.jobCard()}\n`);
  const { modelLoadMs, toListeningMs, decisionToReplyMs } = await app.timings();
  const understood = exchanges.filter(({ wentOn }) => wentOn).length;
  console.log(
    `${understood} of ${exchanges.length} answers understood at the first saying, ${VOICES.length} voices.`,
  );
  console.log(`Page to listening ${toListeningMs} ms, model load ${modelLoadMs} ms.`);
  console.log(`End of speech to first sound of the reply: median ${decisionToReplyMs} ms.`);
  console.log(closed ? 'The job closed by voice.' : 'The job did NOT close.');
  process.exitCode = closed ? 0 : 1;
} finally {
  await app.close();
}

function print({ safety, asked, said, voice, heard, readBack, wentOn }: Exchange): void {
  console.log(`\n[${safety}]`);
  console.log(`  asked       ${asked}`);
  console.log(`  said (${voice})  ${said}`);
  console.log(`  heard       ${heard || '(nothing)'}`);
  console.log(`  understood  ${wentOn ? readBack || 'taken' : `not taken: ${readBack}`}`);
}
