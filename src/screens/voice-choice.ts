import type { Speaker } from '../../audio/mouth/speaker.ts';
import { localVoices } from '../../audio/mouth/system-voice.ts';
import type { Preferences } from './preferences.ts';

/** Names of the voices the tablet itself has that work with no network. */
export function ownVoiceNames(): readonly string[] {
  return globalThis.speechSynthesis ? localVoices(speechSynthesis).map(({ name }) => name) : [];
}

/** How much faster than usual. A fifth slower is heard as unhurried; a quarter faster is still followed in noise (expert estimate). */
const PACE: Readonly<Record<Preferences['pace'], number>> = { slower: 0.8, usual: 1, faster: 1.25 };

/** Gives the mouth voice, loudness and pace that were chosen; a chosen voice that is gone leaves the recorded one. */
export function dressMouth(speaker: Speaker, { ownVoice, volume, pace }: Preferences): void {
  speaker.setVolume(volume / 100);
  speaker.setPace(PACE[pace]);
  const voice = globalThis.speechSynthesis
    ? localVoices(speechSynthesis).find(({ name }) => name === ownVoice)
    : undefined;
  speaker.useSystemVoice(voice);
}
