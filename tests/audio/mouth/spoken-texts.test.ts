import { expect, it } from 'vitest';
import { missingClips } from '../../../audio/mouth/voice-index.ts';
import { spokenTexts } from '../../../src/build/spoken-texts.ts';
import { committedVoice } from './committed-voice.ts';

it('everything the app can say has a clip; if not, run "npm run voice"', async () => {
  const { index } = await committedVoice();
  expect(missingClips(spokenTexts(), index)).toEqual([]);
});
