import { join } from 'node:path';
import { MPEGDecoder } from 'mpg123-decoder';
import type { PackedVoice } from '../../../audio/mouth/render/clip-packs.ts';
import { readVoiceFolder } from '../../../audio/mouth/render/voice-folder.ts';
import { speechSpan } from '../../../audio/mouth/speech-span.ts';
import { clipPlace } from '../../../audio/mouth/voice-index.ts';

/** The voice that ships, as it lies in the tree. @throws Error where there is none */
export async function committedVoice(): Promise<PackedVoice> {
  const voice = await readVoiceFolder(join(import.meta.dirname, '../../../public/voice'));
  if (voice === undefined) throw new Error('There is no recorded voice: run "npm run voice".');
  return voice;
}

export interface DecodedClip {
  /** Everything the decoder gave, its silence too. */
  readonly samples: Float32Array;
  /** The speech alone. */
  readonly speech: Float32Array;
  readonly sampleRateHz: number;
}

/** Decodes with mpg123, which shares no code with the encoder or with any browser. */
export async function startDecoder(): Promise<(mp3: Uint8Array) => Promise<DecodedClip>> {
  const decoder = new MPEGDecoder({ enableGapless: false });
  await decoder.ready;
  return async (mp3) => {
    const { channelData, sampleRate, errors } = decoder.decode(mp3);
    await decoder.reset();
    const [samples] = channelData;
    if (samples === undefined || errors.length > 0)
      throw new Error(`mpg123 cannot decode a clip of ${mp3.length} bytes.`);
    const span = speechSpan(samples, sampleRate);
    return { samples, speech: samples.subarray(span?.start ?? 0, span?.end ?? 0), sampleRateHz: sampleRate };
  };
}

/** The MP3 of a fragment. @throws Error where it has none */
export function committedClip(
  voice: PackedVoice,
  fragment: string,
): { readonly mp3: Uint8Array; readonly speechMs: number } {
  const place = clipPlace(voice.index, fragment);
  const pack = place && voice.files.get(voice.index.packs[place.pack]?.file ?? '');
  if (place === undefined || pack === undefined) throw new Error(`There is no clip of "${fragment}".`);
  return { mp3: pack.subarray(place.offset, place.offset + place.length), speechMs: place.speechMs };
}
