/** What the app would make of continuous sound: the ears' own detector and reader, the grammar's own understanding. */
import { Cutter } from '../../audio/ears/cutter.ts';
import { FrontEnd } from '../../audio/ears/front-end.ts';
import { LevelMeter, rmsDbfs } from '../../audio/ears/level.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { BLOCK_SAMPLES, EARS_RATE_HZ, LEVEL_SAMPLES, msToSamples } from '../../audio/ears/sound-format.ts';
import {
  END_AFTER_COMPLETE_MS,
  END_AFTER_INCOMPLETE_MS,
  SpeechDetector,
} from '../../audio/ears/speech-detector.ts';
import { marginOf } from '../../audio/ears/utterance.ts';
import { readUtterance } from '../../audio/ears/utterance-reader.ts';
import { UtteranceSound } from '../../audio/ears/utterance-sound.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';
import { canGoOn, recogniserList } from '../../grammar/compile.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';

/** The shortest sound the reader takes. */
const leastSamples = msToSamples(60);

const ditherSeed = 1;

/** What was made of a stretch of sound, and how sure the ears were of it, 0 to 1. */
export type Heard = Understanding & { readonly margin: number };

/**
 * @param samples at the ears' rate; the first quarter of a second is taken as the room
 * @param voiceDbfs how loud the person is who was understood before, if anybody was
 * @returns one for each stretch of sound that the detector took for speech, in order
 */
export async function hearScene(
  recogniser: Recogniser,
  samples: Float32Array,
  expecting: Expecting,
  voiceDbfs?: number,
): Promise<readonly Heard[]> {
  const list = recogniserList(expecting);
  const detector = new SpeechDetector();
  detector.endAfter(canGoOn(expecting) ? END_AFTER_INCOMPLETE_MS : END_AFTER_COMPLETE_MS);
  const sound = new UtteranceSound();
  const loudness = new Cutter(LEVEL_SAMPLES);
  const meter = new LevelMeter();
  for (let utterance = 0; voiceDbfs !== undefined && utterance < 3; utterance++) meter.takeVoice(voiceDbfs);
  const understood: Heard[] = [];
  const frontEnd = new FrontEnd(EARS_RATE_HZ, seededRandom(ditherSeed));
  const blocks = frontEnd.push(samples);
  frontEnd.close();
  for (const [i, block] of blocks.entries()) {
    const position = (i + 1) * BLOCK_SAMPLES;
    const events = detector.push(block.denoised);
    for (const heard of loudness.cut(block.heard)) meter.take(heard);
    sound.take(block, detector.isSpeech || events.length > 0, position);
    for (const event of events) {
      if (event.type !== 'ended') continue;
      const { samples: near, indexOf } = sound.soFar();
      const isFaint = meter.isFaint(rmsDbfs(sound.heardBetween(event.startSample, event.endSample)));
      sound.clear();
      detector.resumeAt(position);
      const [from, to] = [Math.max(0, indexOf(event.startSample)), indexOf(event.endSample)];
      if (event.because === 'cut' || to - from < leastSamples) continue;
      const reading = await readUtterance(recogniser, list, near, from, to)?.reading;
      if (!reading) throw new Error('The recogniser did not take the list.');
      const text = reading.words.map(({ word }) => word).join(' ');
      const margin = marginOf(reading.words, reading.span, isFaint);
      understood.push({ ...understand(text, expecting, margin), margin });
    }
  }
  return understood;
}
