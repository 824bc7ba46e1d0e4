/**
 * Prints how long a person waits for the app, in a headless Chromium on this machine: page to listening, loading of
 * the speech model, end of speech to the reply; and how much script is read before the recogniser's own.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { talkThrough } from '../browser/person.ts';
import { asIn, HOLDER_SET_LOOSE } from '../browser/scenario.ts';
import { openTalkingApp } from '../browser/talking-app.ts';

const app = await openTalkingApp({ roomDbfs: -55 });
try {
  const { exchanges } = await talkThrough(app.page, asIn(HOLDER_SET_LOOSE), ['slt', 'rms', 'awb'], {
    stopAt: ({ safety }) => safety === 'Eyes only',
  });
  const { modelLoadMs, toListeningMs, decisionToReplyMs } = await app.timings();
  console.table({
    'page to listening, ms': { measured: toListeningMs, reach: 'under 4000' },
    'of that, loading the speech model, ms': { measured: modelLoadMs, reach: 'under 1500' },
    'end of speech decided to first sound of the reply, median ms': {
      measured: decisionToReplyMs,
      reach: 'under 300',
    },
    'answers taken at the first saying': {
      measured: `${exchanges.filter(({ wentOn }) => wentOn).length} of ${exchanges.length}`,
      reach: '',
    },
    'script before the recogniser, gzipped KB': {
      measured: scriptBeforeRecogniserKb(app.buildFolder),
      reach: 'under 200',
    },
  });
} finally {
  await app.close();
}

/** All script but the recogniser and what is read beside it once somebody wants to speak. */
function scriptBeforeRecogniserKb(buildFolder: string): number {
  const assets = join(buildFolder, 'assets');
  const bytes = readdirSync(assets)
    .filter((name) => name.endsWith('.js') && !/^(vosk|understanding)/.test(name))
    .reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length, 0);
  return Math.round(bytes / 1000);
}
