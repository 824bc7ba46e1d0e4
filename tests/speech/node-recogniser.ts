/** The ears' recogniser over a model loaded in Node: the same library, without the browser's store and locks. */
import type { KaldiRecognizer, Model } from 'vosk-browser';
import { chunkMs, recogniserTimeFactor } from '../../audio/command-model/decode-protocol.ts';
import type { DecodedWord } from '../../audio/ears/heard-words.ts';
import type { DecodingSession, Recogniser } from '../../audio/ears/recogniser.ts';
import { bundledModel } from '../../audio/ears/speech-model.ts';
import { sampleRate } from './speak.ts';

const chunk = (chunkMs * sampleRate) / 1000;
const answerWithinMs = 120_000;

type ResultMessage = {
  result: { result?: { word: string; start: number; end: number; conf: number }[]; text: string };
};

/** What was decoded so far, and what it cost. */
export interface DecodingWork {
  decodedSeconds: number;
  /** Processor time of the whole process, which other work on the machine does not lengthen. */
  cpuSeconds: number;
}

/** @param work is added to as utterances are decoded */
export function recogniserOver(model: Model, work: DecodingWork): Recogniser {
  return {
    model: bundledModel(''),
    loadMs: 0,
    unknownIn: () => [],
    open: (list) => ({ ok: true, session: openSession(model, list, work) }),
    close: () => {},
  };
}

function openSession(model: Model, list: readonly string[], work: DecodingWork): DecodingSession {
  const recogniser: KaldiRecognizer = new model.KaldiRecognizer(sampleRate, JSON.stringify(list));
  recogniser.setWords(true);
  return {
    decode: async (samples) => {
      const cpu = process.cpuUsage();
      const words = await decode(recogniser, samples);
      work.decodedSeconds += samples.length / sampleRate;
      work.cpuSeconds += process.cpuUsage(cpu).user / 1e6;
      return { ok: true, words };
    },
    dispose: () => recogniser.remove(),
  };
}

/** Every word it hears, with its time. @throws on a recogniser's error, or when it does not answer */
function decode(recogniser: KaldiRecognizer, samples: Float32Array): Promise<readonly DecodedWord[]> {
  const words: DecodedWord[] = [];
  return new Promise((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error('The recogniser did not finish in time.')),
      answerWithinMs,
    );
    let chunksLeft = Math.ceil(samples.length / chunk);
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
        resolve(words);
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
    for (let at = 0; at < samples.length; at += chunk) {
      recogniser.acceptWaveformFloat(samples.subarray(at, at + chunk), sampleRate);
    }
  });
}
