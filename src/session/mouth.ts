import { prepareEarcons } from '../../audio/mouth/earcons.ts';
import { type Speaker, speaker } from '../../audio/mouth/speaker.ts';
import type { SpeechTrouble } from '../../audio/mouth/voice.ts';
import { openVoiceFiles } from '../../audio/mouth/voice-files.ts';

export interface Mouth {
  readonly speaker: Speaker;
  close(): void;
}

/**
 * Opens the recorded voice. Must be called from a tap, or the browser gives no sound.
 * @throws Error with a sentence for the screen where the voice is not on this tablet
 */
export async function openMouth(onTrouble: (trouble: SpeechTrouble) => void): Promise<Mouth> {
  const context = new AudioContext();
  // Resumed while the tap still counts, before anything is fetched.
  const resumed = context.resume();
  const files = await openVoiceFiles(new URL('voice/', document.baseURI));
  await resumed;
  prepareEarcons(context);
  return {
    speaker: speaker({ context, files, onTrouble, synthesis: globalThis.speechSynthesis }),
    close: () => void context.close(),
  };
}
