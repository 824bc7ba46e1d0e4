import type { Speaker } from '../../audio/mouth/speaker.ts';
import { localVoices } from '../../audio/mouth/system-voice.ts';
import type { Preferences } from './preferences.ts';

/** Names of the voices the tablet itself has that work with no network. */
export function ownVoiceNames(): readonly string[] {
  return globalThis.speechSynthesis ? localVoices(speechSynthesis).map(({ name }) => name) : [];
}

/** Gives the mouth the voice and the loudness that were chosen; a chosen voice that is gone leaves the recorded one. */
export function dressMouth(speaker: Speaker, { ownVoice, volume }: Preferences): void {
  speaker.setVolume(volume / 100);
  const voice = globalThis.speechSynthesis
    ? localVoices(speechSynthesis).find(({ name }) => name === ownVoice)
    : undefined;
  speaker.useSystemVoice(voice);
}
