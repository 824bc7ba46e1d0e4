/**
 * Prints whether the ears' memory stays flat: an hour of seeded sound, a phrase every 20 seconds, heard faster than it
 * would last. Prints as well how long the meaning takes beyond the pause that ends an utterance.
 * Run with: npm run bench:ears-hour [-- minutes]
 */
import { BLOCK_SAMPLES } from '../../audio/ears/sound-format.ts';
import { END_AFTER_COMPLETE_MS, GUESS_AFTER_MS } from '../../audio/ears/speech-detector.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';
import { ensureDebianPackages } from '../debian.ts';
import { loadBundledModel } from '../speech/bundled-model.ts';
import { hearScene } from '../speech/hear-scene.ts';
import { recogniserOver } from '../speech/node-recogniser.ts';
import { makeScene, noiseFrom, type Room, speechLevel } from '../speech/scenes.ts';
import { sampleRate } from '../speech/speak.ts';
import { phraseTrials } from '../speech/trials.ts';
import { voicesFor } from '../speech/voices.ts';

const minutes = Number(process.argv[2] ?? 60);
const everySeconds = 20;
const reportEveryMinutes = 10;
const room: Room = { noise: 'engine', snrDb: 15 };
const seed = 60;

ensureDebianPackages();
const print = console.log;
// The library prints each file that it unpacks.
console.log = () => {};
const { model, close } = await loadBundledModel();
const work = { decodedSeconds: 0, cpuSeconds: 0 };
const recogniser = recogniserOver(model, work);

const trials = phraseTrials((minutes * 60) / everySeconds, 'state', voicesFor('tuning'), seed);
const decodingMs: number[] = [];
const mebibytes = (bytes: number) => `${(bytes / 2 ** 20).toFixed(0)} MiB`;
let heard = 0;
let understood = 0;
for (const [i, trial] of trials.entries()) {
  if (i % ((reportEveryMinutes * 60) / everySeconds) === 0) printMemory(i);
  const scene = makeScene(trial.sound(), room, trial.seed);
  const before = work.cpuSeconds;
  const made = await hearScene(recogniser, longer(scene.samples, trial.seed), trial.expecting);
  heard += made.length;
  understood += made.filter(({ outcome }) => outcome === 'understood').length;
  if (made.length === 1) decodingMs.push(1000 * (work.cpuSeconds - before));
}
printMemory(trials.length);
const median = decodingMs.sort((a, b) => a - b)[Math.floor(decodingMs.length / 2)] ?? Number.NaN;
const beyond = Math.max(0, median - (END_AFTER_COMPLETE_MS - GUESS_AFTER_MS));
print(`${trials.length} phrases said, ${heard} utterances heard, ${understood} understood`);
print(
  `decoding an utterance takes ${median.toFixed(0)} ms of processor time at the median, begun ${GUESS_AFTER_MS} ms into the pause: the meaning comes ${beyond.toFixed(0)} ms after the ${END_AFTER_COMPLETE_MS} ms that end an utterance (150 asked)`,
);
print(`real-time factor of decoding ${(work.cpuSeconds / work.decodedSeconds).toFixed(2)} (0.25 asked)`);
close();
process.exit(0); // the library's worker has no end of its own

/** The scene after as much of its room as makes it last until the next phrase. */
function longer(scene: Float32Array, sceneSeed: number): Float32Array {
  const room = noiseOf(Math.max(0, everySeconds * sampleRate - scene.length), sceneSeed);
  const samples = new Float32Array(room.length + scene.length);
  samples.set(room);
  samples.set(scene, room.length);
  return samples.subarray(0, samples.length - (samples.length % BLOCK_SAMPLES));
}

function noiseOf(samples: number, noiseSeed: number): Float32Array {
  const gain = speechLevel * 10 ** (-room.snrDb / 20);
  return noiseFrom(room.noise, samples, seededRandom(noiseSeed)).map((sample) => sample * gain);
}

function printMemory(phrases: number): void {
  const { rss, heapUsed, arrayBuffers } = process.memoryUsage();
  const minute = (phrases * everySeconds) / 60;
  print(
    `minute ${minute.toFixed(0)}: whole process ${mebibytes(rss)} (the decoder's WebAssembly with it), heap ${mebibytes(heapUsed)}, buffers ${mebibytes(arrayBuffers)}`,
  );
}
