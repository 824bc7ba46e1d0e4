/** What the app would make of a scene: the ears' own detector, cleaning and decoding, the grammar's own understanding. */
import type { Model } from 'vosk-browser';
import { prepareUtterance } from '../../audio/command-model/listening/prepare-utterance.ts';
import { BLOCK_SAMPLES } from '../../audio/ears/sound-format.ts';
import { SpeechDetector, type SpeechEvent } from '../../audio/ears/speech-detector.ts';
import { marginOf, wordsWithin } from '../../audio/ears/utterance.ts';
import { listFor, plainlyNamed } from '../../audio/ears/utterance-reader.ts';
import { UtteranceSound } from '../../audio/ears/utterance-sound.ts';
import { recogniserList } from '../../grammar/compile.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';
import { listen } from './listener.ts';

export interface HeardScene {
  /** One for each stretch of sound that the detector took for speech. */
  readonly understood: readonly Understanding[];
  /** Sound that was decoded, and the processor time it took. */
  readonly decodedSeconds: number;
  readonly cpuSeconds: number;
}

export async function hearScene(
  model: Model,
  samples: Float32Array,
  expecting: Expecting,
): Promise<HeardScene> {
  const list = recogniserList(expecting);
  const detector = new SpeechDetector();
  const sound = new UtteranceSound();
  const understood: Understanding[] = [];
  let decodedSeconds = 0;
  let cpuSeconds = 0;
  for (let at = 0; at + BLOCK_SAMPLES <= samples.length; at += BLOCK_SAMPLES) {
    const block = samples.subarray(at, at + BLOCK_SAMPLES);
    const events = detector.push(block);
    sound.take(block, detector.isSpeech || events.length > 0, at + BLOCK_SAMPLES);
    for (const event of events) {
      if (event.type !== 'ended' || event.because === 'cut') continue;
      const heard = await decode(model, list, sound, event);
      sound.clear();
      decodedSeconds += heard.seconds;
      cpuSeconds += heard.cpuSeconds;
      understood.push(understand(heard.text, expecting, heard.margin));
    }
  }
  return { understood, decodedSeconds, cpuSeconds };
}

async function decode(
  model: Model,
  list: readonly string[],
  sound: UtteranceSound,
  speech: Extract<SpeechEvent, { type: 'ended' }>,
): Promise<{ text: string; margin: number; seconds: number; cpuSeconds: number }> {
  const raw = sound.soFar();
  const prepared = prepareUtterance(
    raw.samples,
    raw.indexOf(speech.startSample),
    Math.min(raw.samples.length, raw.indexOf(speech.endSample)),
  );
  const { words, cpuSeconds } = await listen(
    model,
    listFor(list, prepared.speechOverRoomDb),
    prepared.samples,
  );
  const span = { startMs: prepared.speechStartMs, endMs: prepared.speechEndMs };
  const inSpeech = wordsWithin(plainlyNamed(words), span);
  return {
    text: inSpeech.map(({ word }) => word).join(' '),
    margin: marginOf(inSpeech, span),
    seconds: prepared.samples.length / 16_000,
    cpuSeconds,
  };
}
