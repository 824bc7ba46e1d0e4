/** A microphone path without a browser: the turns chart, its ears and a clock, fed with sound block by block. */
import { createActor, SimulatedClock } from 'xstate';
import { FrontEnd, type SoundBlock } from '../../audio/ears/front-end.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { BLOCK_MS, BLOCK_SAMPLES, EARS_RATE_HZ } from '../../audio/ears/sound-format.ts';
import { SpeechDetector } from '../../audio/ears/speech-detector.ts';
import { StopEars } from '../../audio/ears/stop-ears.ts';
import { readUtterance } from '../../audio/ears/utterance-reader.ts';
import { UtteranceSound } from '../../audio/ears/utterance-sound.ts';
import { type Prompt, type TurnEffects, turnsMachine } from '../../audio/turns.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';

const prompt: Prompt = { id: 'a question', mayBeInterrupted: true };

const ditherSeed = 1;

export interface RoomWithTurns {
  /** The mouth begins to ask. */
  ask(): void;
  /** The mouth has come to its end. */
  finish(): void;
  /** Lets the microphone hear some sound; what is decoded meanwhile is decided before it returns. */
  hear(samples: Float32Array): Promise<void>;
  /** Everything that was taken for a person, in words. */
  readonly events: readonly string[];
  readonly state: string;
}

/**
 * @param list what is listened for when the ears are open
 * @param stopWords what is listened for while the mouth speaks
 */
export function roomWithTurns(
  recogniser: Recogniser,
  list: readonly string[],
  stopWords: readonly string[],
): RoomWithTurns {
  const events: string[] = [];
  const decoding: Promise<unknown>[] = [];
  const frontEnd = new FrontEnd(EARS_RATE_HZ, seededRandom(ditherSeed));
  const detector = new SpeechDetector();
  const sound = new UtteranceSound();
  const clock = new SimulatedClock();
  let position = 0;
  let stopEars: StopEars | undefined;
  let isOpen = false;

  /** The recogniser, with everything it still decodes known. */
  const watched: Recogniser = {
    ...recogniser,
    open(words) {
      const opened = recogniser.open(words);
      if (!opened.ok) return opened;
      const { session } = opened;
      const decode = (samples: Float32Array) => {
        const decoded = session.decode(samples);
        decoding.push(decoded);
        return decoded;
      };
      return { ok: true, session: { decode, dispose: () => session.dispose() } };
    },
  };
  const drop = () => {
    sound.clear();
    detector.resumeAt(position);
    stopEars?.shut();
    stopEars = undefined;
  };
  const open = () => {
    drop();
    isOpen = true;
  };
  const effects: TurnEffects = {
    prepareEars: () => {},
    shutEars(mayStopCutIn) {
      drop();
      isOpen = false;
      if (!mayStopCutIn) return;
      stopEars = new StopEars(stopWords, (word) => {
        events.push(`stopped by "${word}"`);
        turns.send({ type: 'stop.heard' });
      });
    },
    giveFloor: () => {},
    openEars: open,
    restEars: open,
    speak: () => {},
    hush: () => {},
    decide: () => {},
    showBigButtons: () => {},
  };
  const turns = createActor(turnsMachine(effects), { clock });
  turns.start();

  async function take(block: SoundBlock): Promise<void> {
    position += BLOCK_SAMPLES;
    if (!isOpen && turns.getSnapshot().value !== 'idle') {
      stopEars?.take(block, watched);
      return;
    }
    const heard = detector.push(block.denoised);
    sound.take(block, detector.isSpeech || heard.length > 0, position);
    for (const event of heard) {
      if (event.type === 'started') {
        events.push('speech');
        turns.send({ type: 'speech.started' });
        continue;
      }
      const { samples, indexOf } = sound.soFar();
      drop();
      const from = indexOf(event.startSample);
      const reading = await readUtterance(watched, list, samples, from, indexOf(event.endSample))?.reading;
      const words = reading?.words.map(({ word }) => word) ?? [];
      if (words.length > 0) events.push(`words "${words.join(' ')}"`);
      turns.send({ type: 'speech.dropped' });
    }
  }

  return {
    events,
    get state() {
      const { value } = turns.getSnapshot();
      return typeof value === 'string' ? value : (Object.keys(value)[0] ?? '');
    },
    ask: () => turns.send({ type: 'ask', prompt }),
    finish: () => turns.send({ type: 'mouth.finished' }),
    async hear(samples) {
      for (const block of frontEnd.push(samples)) {
        await take(block);
        await Promise.all(decoding.splice(0));
        // What waits for a decoding goes on in a later turn of the event loop.
        await new Promise((resolve) => setImmediate(resolve));
        clock.increment(BLOCK_MS);
      }
    },
  };
}
