/** Somebody else who talks on, near enough to be understood. */
import { otherTalk } from '../other-talk.ts';
import { drawn } from '../random.ts';
import { sampleRate as clipsAt, spoken } from '../speak.ts';
import { voices } from '../voices.ts';
import { atUnitLevel } from './basics.ts';

const talkers = voices.filter(({ engine }) => engine === 'flite');

/** Root mean square 1. One voice, sentence after sentence with short breaths. @throws at another rate than the clips' */
export function secondTalkerNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  if (sampleRate !== clipsAt)
    throw new RangeError(`The talker speaks at ${clipsAt} Hz, not at ${sampleRate}.`);
  const talker = drawn(talkers, random);
  const out = new Float32Array(samples);
  for (let at = 0; at < samples; ) {
    const sentence = atUnitLevel(spoken(talker, drawn(otherTalk, random)));
    out.set(sentence.subarray(0, samples - at), at);
    at += sentence.length + Math.round(clipsAt * (0.15 + 0.4 * random()));
  }
  return atUnitLevel(out);
}
