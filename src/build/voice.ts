/**
 * `npm run voice`: renders everything the bundled voice says into public/voice. Run it after changing any spoken text;
 * a test fails while a text has no clip.
 */
import { fileURLToPath } from 'node:url';
import { startClipRenderer } from '../../audio/mouth/render/clip-renderer.ts';
import { updateVoiceFolder } from '../../audio/mouth/render/voice-folder.ts';
import { spokenTexts } from './spoken-texts.ts';

const folder = fileURLToPath(new URL('../../public/voice', import.meta.url));

const report = await updateVoiceFolder(folder, spokenTexts(), await startClipRenderer());
console.log(
  `${report.rendered.length} clips rendered, ${report.kept} kept: ` +
    `${(report.speechS / 60).toFixed(1)} minutes of speech in ${(report.bytes / 1e6).toFixed(2)} MB.`,
);
