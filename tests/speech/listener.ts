/** Gives prepared sound to a recogniser of its own, as audio/command-model/decode-protocol.ts says. */
import type { KaldiRecognizer, Model } from 'vosk-browser';
import { chunkMs, recogniserTimeFactor } from '../../audio/command-model/decode-protocol.ts';
import type { DecodedWord } from '../../audio/ears/heard-words.ts';
import { sampleRate } from './voices.ts';

export interface Heard {
  readonly words: readonly DecodedWord[];
  /** Processor time of the whole process, which other work on the machine does not lengthen. */
  readonly cpuSeconds: number;
}

type ResultMessage = {
  result: { result?: { word: string; start: number; end: number; conf: number }[]; text: string };
};

/** Every word it hears, with its time. @throws on a recogniser's error, or after `timeoutMs`. */
export async function listen(
  model: Model,
  list: readonly string[],
  samples: Float32Array,
  timeoutMs = 60_000,
): Promise<Heard> {
  const recogniser: KaldiRecognizer = new model.KaldiRecognizer(sampleRate, JSON.stringify(list));
  recogniser.setWords(true);
  const words: DecodedWord[] = [];
  const cpu = process.cpuUsage();
  try {
    await new Promise<void>((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error('The recogniser did not finish in time.')), timeoutMs);
      let chunksLeft = Math.ceil(samples.length / ((chunkMs * sampleRate) / 1000));
      recogniser.on('error', (message) => {
        clearTimeout(timer);
        reject(new Error(`The recogniser failed: ${JSON.stringify(message)}`));
      });
      // Every chunk is answered once, by a partial result or an endpoint's result; then comes the final one.
      const answered = () => {
        chunksLeft--;
        if (chunksLeft === 0) recogniser.retrieveFinalResult();
        if (chunksLeft < 0) {
          clearTimeout(timer);
          resolve();
        }
      };
      recogniser.on('partialresult', answered);
      recogniser.on('result', (message) => {
        for (const { word, start, end, conf } of (message as unknown as ResultMessage).result.result ?? []) {
          words.push({
            word,
            startMs: 1000 * start * recogniserTimeFactor,
            endMs: 1000 * end * recogniserTimeFactor,
            confidence: conf,
          });
        }
        answered();
      });
      const chunk = (chunkMs * sampleRate) / 1000;
      for (let at = 0; at < samples.length; at += chunk) {
        recogniser.acceptWaveformFloat(samples.subarray(at, at + chunk), sampleRate);
      }
    });
  } finally {
    recogniser.remove();
  }
  return {
    words,
    cpuSeconds: process.cpuUsage(cpu).user / 1e6,
  };
}
