import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createResampler } from '../../audio/ears/resample.ts';
import { BLOCK_SAMPLES, EARS_RATE_HZ } from '../../audio/ears/sound-format.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';
import { graphToken, recogniserList } from '../../grammar/compile.ts';
import { phrasesFor, SYMPTOM_MEANINGS } from '../../grammar/lexicon.ts';
import { committedClip, committedVoice, startDecoder } from '../audio/mouth/committed-voice.ts';
import { loadBundledModel } from './bundled-model.ts';
import { inShed, sheds } from './echo.ts';
import { recogniserOver } from './node-recogniser.ts';
import { pinkNoise, rms } from './noises/basics.ts';
import { shuffled } from './random.ts';
import { spoken } from './speak.ts';
import { roomWithTurns } from './turns-in-a-room.ts';
import { voices } from './voices.ts';
import type { LoadedModel } from './vosk-in-node.ts';

/**
 * The mouth must not hear itself: its own clips come in at the microphone with a shed's echo, some decibels under what was
 * played, over the noise of a quiet room; while they are spoken only a called stop may cut in, and afterwards nothing is
 * left of them that passes for a person.
 */

const SEED = 20;
const SAMPLED_CLIPS = 11;
const STOP_CLIPS = 4;
const ECHO_DB = [-20, -13, -6] as const;
const ROOM_DBFS = -58;

const list = recogniserList({ meanings: SYMPTOM_MEANINGS });
const stopWords = phrasesFor('stop').map(({ words }) => graphToken(words));

let loaded: LoadedModel;
let clips: readonly { readonly text: string; readonly echo: Float32Array; readonly spokenSamples: number }[];

beforeAll(async () => {
  loaded = await loadBundledModel();
  const voice = await committedVoice();
  const decode = await startDecoder();
  const random = seededRandom(SEED);
  const texts = shuffled(Object.keys(voice.index.clips), random);
  // What sounds most like a person who wants it to stop is its own word for it.
  const chosen = new Set([
    ...texts.slice(0, SAMPLED_CLIPS),
    ...texts.filter((text) => /\bstop/i.test(text)).slice(0, STOP_CLIPS),
  ]);
  const made = [];
  for (const text of chosen) {
    const { speech, sampleRateHz } = await decode(committedClip(voice, text).mp3);
    const heard = createResampler(sampleRateHz, EARS_RATE_HZ).push(speech);
    made.push({ text, echo: inShed(heard, sheds.near, EARS_RATE_HZ, random), spokenSamples: heard.length });
  }
  clips = made;
}, 300_000);
afterAll(() => loaded?.close());

/** Sound of a quiet room. */
function room(seconds: number, seed: number): Float32Array {
  const noise = pinkNoise(seconds * EARS_RATE_HZ, seededRandom(seed));
  const gain = 10 ** (ROOM_DBFS / 20) / rms(noise);
  return noise.map((sample) => sample * gain);
}

function mixed(room: Float32Array, sound: Float32Array, gain: number, from = 0): Float32Array {
  return room.map((sample, i) => sample + gain * (sound[i - from] ?? 0));
}

function openRoom() {
  return roomWithTurns(recogniserOver(loaded.model, { decodedSeconds: 0, cpuSeconds: 0 }), list, stopWords);
}

describe('the mouth does not hear itself', { timeout: 180_000 }, () => {
  it.each(ECHO_DB)('with its echo %d dB under what it plays', async (echoDb) => {
    for (const { text, echo, spokenSamples } of clips) {
      const seconds = Math.ceil(echo.length / EARS_RATE_HZ) + 3;
      const heard = mixed(room(seconds, text.length), echo, 10 ** (echoDb / 20));
      const turns = openRoom();
      await turns.hear(room(1.5, text.length + 1));
      turns.ask();
      const ends = Math.ceil(spokenSamples / BLOCK_SAMPLES) * BLOCK_SAMPLES;
      await turns.hear(heard.subarray(0, ends));
      turns.finish();
      await turns.hear(heard.subarray(ends));
      expect(turns.events, `"${text}" at ${echoDb} dB`).toEqual([]);
      expect(turns.state).toBe('listening');
    }
  });

  // Which of the stop phrases it is taken for does not matter, since each stops.
  it.each(['stop', 'stop stop', 'stop everything now'])(
    'and yet is stopped by a person who calls "%s" over it',
    async (phrase) => {
      const long = clips.filter(({ spokenSamples }) => spokenSamples > 2.5 * EARS_RATE_HZ).slice(0, 4);
      const callers = voices.filter(({ engine }) => engine === 'flite').slice(0, 4);
      const stopped = [];
      for (const [i, { echo }] of long.entries()) {
        const call = spoken(callers[i % callers.length] ?? (voices[0] as (typeof voices)[number]), phrase);
        const called = 0.1 / rms(call);
        const own = mixed(room(6, i), echo, 10 ** (-20 / 20));
        const turns = openRoom();
        await turns.hear(room(1.5, i + 1));
        turns.ask();
        await turns.hear(mixed(own, call, called, EARS_RATE_HZ));
        stopped.push(...turns.events.filter((event) => event.startsWith('stopped by')));
      }
      expect(long.length).toBeGreaterThanOrEqual(3);
      expect(stopped.length).toBeGreaterThanOrEqual(long.length - 1);
    },
  );
});
