/** Says every trial into a room and lets the app's ears, and PocketSphinx beside them, hear it. */
import type { Model } from 'vosk-browser';
import type { Pronunciation } from '../../audio/command-model/sphinx-dictionary.ts';
import { recogniserList, UNKNOWN_WORD } from '../../grammar/compile.ts';
import { pronunciations } from '../../grammar/pronunciations.ts';
import { understand } from '../../grammar/understand.ts';
import { hearScene } from './hear-scene.ts';
import { pocketSphinxHears } from './pocketsphinx.ts';
import { makeScene, type Room, type Scene } from './scenes.ts';
import type { Trial } from './trials.ts';
import { hasFalseConfirmation, type Verdict, verdictOn } from './verdict.ts';
import { sampleRate, speak } from './voices.ts';

export interface TrialOutcome {
  readonly trial: Trial;
  readonly verdict: Verdict;
  /** A lockout confirmation was taken from something that was not its own phrase: must never be. */
  readonly isFalselyConfirmed: boolean;
  readonly heard: string;
}

export interface TrialsOutcome {
  readonly outcomes: readonly TrialOutcome[];
  /** Processor seconds of decoding for each second decoded. */
  readonly realTimeFactor: number;
}

function sceneOf(trial: Trial, room: Room, folder: string): Scene {
  const speech = speak(folder, trial.voice, [trial.text])[0];
  if (!speech) throw new Error(`${trial.voice.name} did not speak.`);
  return makeScene(speech, room, trial.seed);
}

/** @param folder where spoken clips are kept for the next trial that needs them */
export async function runTrials(
  model: Model,
  trials: readonly Trial[],
  room: Room,
  folder: string,
): Promise<TrialsOutcome> {
  const outcomes: TrialOutcome[] = [];
  let [decoded, cpu] = [0, 0];
  for (const trial of trials) {
    const { understood, decodedSeconds, cpuSeconds } = await hearScene(
      model,
      sceneOf(trial, room, folder).samples,
      trial.expecting,
    );
    decoded += decodedSeconds;
    cpu += cpuSeconds;
    outcomes.push({
      trial,
      verdict: verdictOn(trial, understood),
      isFalselyConfirmed: hasFalseConfirmation(trial, understood),
      heard: understood.map(({ words }) => words).join(' / '),
    });
  }
  return { outcomes, realTimeFactor: cpu / Math.max(decoded, 1e-9) };
}

/** Sound left on each side of the speech for PocketSphinx: it hears the clip cut where the speech really is. */
const marginSamples = 0.3 * sampleRate;

/** The same scenes, the same lists, the same understanding, by PocketSphinx with a strict grammar of one phrase. */
export function runTrialsByPocketSphinx(
  trials: readonly Trial[],
  room: Room,
  folder: string,
  dictionary: ReadonlyMap<string, readonly Pronunciation[]>,
): readonly TrialOutcome[] {
  const pronounce = (word: string) =>
    pronunciations[word]?.map((text) => text.split(' ')) ?? dictionary.get(word) ?? [];
  return trials.map((trial) => {
    const { samples, start, end } = sceneOf(trial, room, folder);
    const phrases = recogniserList(trial.expecting)
      .filter((token) => token !== UNKNOWN_WORD)
      .map((token) => token.replaceAll('_', ' '));
    const clip = samples.slice(start - marginSamples, end + marginSamples);
    const heard = pocketSphinxHears([clip], phrases, pronounce)[0] ?? '';
    const understood = [understand(heard, trial.expecting)];
    return {
      trial,
      verdict: verdictOn(trial, understood),
      isFalselyConfirmed: hasFalseConfirmation(trial, understood),
      heard,
    };
  });
}
