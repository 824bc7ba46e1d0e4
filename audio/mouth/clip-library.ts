import { speechSpan } from './speech-span.ts';
import { stretched } from './time-stretch.ts';
import { SpeechFault } from './voice.ts';
import { clipPlace, type VoiceIndex } from './voice-index.ts';

/** A decoded clip and where in it the speech lies. */
export interface PlayableClip {
  readonly buffer: AudioBuffer;
  /** Seconds into the buffer. */
  readonly speechStartS: number;
  readonly speechS: number;
}

/** Gives decoded clips; keeps the packs it has read and the clips used last. */
export interface ClipLibrary {
  /**
   * @param pace how much faster than it was recorded, 0.5 to 2; one pace at a time is kept decoded
   * @throws SpeechFault where the clip is missing, unreadable or not what the index says
   */
  clip(fragment: string, pace: number): Promise<PlayableClip>;
}

/** Speech kept decoded, seconds: some 17 megabytes at 48 kHz. */
const KEPT_DECODED_S = 90;
/** How far the speech found may differ from the index: decoders blur both ends by a frame. */
const SPEECH_TOLERANCE_S = 0.08;

/**
 * @param index the table of contents
 * @param readPack fetches one pack by its file name
 * @param decode turns one MP3 into samples; decodeAudioData of the context that will play them
 * @param hold puts samples of one channel into a buffer of that context
 */
export function clipLibrary(
  index: VoiceIndex,
  readPack: (file: string) => Promise<ArrayBuffer>,
  decode: (mp3: ArrayBuffer) => Promise<AudioBuffer>,
  hold: (samples: Float32Array<ArrayBuffer>, sampleRateHz: number) => AudioBuffer,
): ClipLibrary {
  const packs = new Map<string, Promise<ArrayBuffer>>();
  // A Map keeps the order of insertion, so the first entry is the one used longest ago.
  const decoded = new Map<string, Promise<PlayableClip>>();
  let paceKept = 1;
  const keptS = () =>
    [...decoded.keys()].reduce((sum, text) => sum + (clipPlace(index, text)?.speechMs ?? 0) / 1000, 0);

  async function pack(name: string): Promise<ArrayBuffer> {
    const entry = index.packs[name];
    if (entry === undefined) throw new SpeechFault('badClip', `The voice has no pack ${name}.`);
    const bytes = await remembered(packs, name, () => readPack(entry.file));
    if (bytes.byteLength !== entry.bytes) {
      packs.delete(name);
      throw new SpeechFault(
        'badClip',
        `The voice file ${entry.file} is incomplete. Load the app again when online.`,
      );
    }
    return bytes;
  }

  async function load(fragment: string, pace: number): Promise<PlayableClip> {
    const place = clipPlace(index, fragment);
    if (place === undefined) throw new SpeechFault('noClip', `There is no recording of "${fragment}".`);
    try {
      const bytes = await pack(place.pack);
      const buffer = await decode(bytes.slice(place.offset, place.offset + place.length));
      const clip = playable(buffer, place.speechMs / 1000, fragment);
      return pace === 1 ? clip : paced(clip, pace, hold);
    } catch (error) {
      if (error instanceof SpeechFault) throw error;
      throw new SpeechFault('badClip', `The recording of "${fragment}" cannot be played: ${String(error)}`);
    }
  }

  return {
    clip(fragment, pace) {
      if (pace !== paceKept) decoded.clear();
      paceKept = pace;
      const clip = remembered(decoded, fragment, () => load(fragment, pace));
      decoded.delete(fragment);
      decoded.set(fragment, clip);
      for (const oldest of decoded.keys()) {
        if (oldest === fragment || keptS() <= KEPT_DECODED_S) break;
        decoded.delete(oldest);
      }
      return clip;
    },
  };
}

/** Placed by what is heard, since decoders differ in the silence they leave; checked against what was rendered. */
function playable(buffer: AudioBuffer, expectedS: number, fragment: string): PlayableClip {
  const span = speechSpan(buffer.getChannelData(0), buffer.sampleRate);
  const speechS = span === undefined ? 0 : (span.end - span.start) / buffer.sampleRate;
  if (span === undefined || Math.abs(speechS - expectedS) > SPEECH_TOLERANCE_S) {
    throw new SpeechFault(
      'badClip',
      `The recording of "${fragment}" lasts ${speechS.toFixed(2)} seconds, not ${expectedS.toFixed(2)}.`,
    );
  }
  return { buffer, speechStartS: span.start / buffer.sampleRate, speechS };
}

/** The speech of a clip at another pace and its own pitch, without the silence around it. */
function paced(
  { buffer, speechStartS, speechS }: PlayableClip,
  pace: number,
  hold: (samples: Float32Array<ArrayBuffer>, sampleRateHz: number) => AudioBuffer,
): PlayableClip {
  const start = Math.round(speechStartS * buffer.sampleRate);
  const speech = buffer.getChannelData(0).slice(start, start + Math.round(speechS * buffer.sampleRate));
  const samples = stretched(speech, buffer.sampleRate, pace);
  return {
    buffer: hold(samples, buffer.sampleRate),
    speechStartS: 0,
    speechS: samples.length / buffer.sampleRate,
  };
}

/** The promise of an earlier call; a failed one is forgotten, so that the next call tries again. */
function remembered<T>(memory: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
  const earlier = memory.get(key);
  if (earlier !== undefined) return earlier;
  const made = make();
  memory.set(key, made);
  made.catch(() => {
    if (memory.get(key) === made) memory.delete(key);
  });
  return made;
}
