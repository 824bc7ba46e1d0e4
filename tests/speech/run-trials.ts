/** Says every trial into a room and lets the app's ears, and PocketSphinx beside them, hear it. */
import type { Pronunciation } from '../../audio/command-model/sphinx-dictionary.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { recogniserList, UNKNOWN_WORD } from '../../grammar/compile.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { pronunciations } from '../../grammar/pronunciations.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';
import { hearScene } from './hear-scene.ts';
import { pocketSphinxHears, type StrictGrammar } from './pocketsphinx.ts';
import { makeScene, type Room, type Scene } from './scenes.ts';
import { sampleRate } from './speak.ts';
import type { Trial } from './trials.ts';
import { hasFalseConfirmation, type Verdict, verdictOn } from './verdict.ts';

export interface TrialOutcome {
  readonly speaker: string;
  readonly text: string;
  readonly heard: string;
  /** Whether what was said means something where it was said. */
  readonly isCommand: boolean;
  readonly verdict: Verdict;
  /** A lockout confirmation was taken from something that was not its own phrase: must never be. */
  readonly isFalselyConfirmed: boolean;
}

function sceneOf(trial: Trial, room: Room): Scene {
  return makeScene(trial.sound(), room, trial.seed, trial.bringsRoom);
}

function outcomeOf(trial: Trial, understood: readonly Understanding[]): TrialOutcome {
  const { speaker, text, expecting } = trial;
  return {
    speaker,
    text,
    heard: understood.map(({ words }) => words).join(' / '),
    isCommand: understand(text, expecting).outcome === 'understood',
    verdict: verdictOn(trial, understood),
    isFalselyConfirmed: hasFalseConfirmation(trial, understood),
  };
}

export async function runTrials(
  recogniser: Recogniser,
  trials: readonly Trial[],
  room: Room,
): Promise<readonly TrialOutcome[]> {
  const outcomes: TrialOutcome[] = [];
  for (const trial of trials) {
    const { samples } = sceneOf(trial, room);
    outcomes.push(outcomeOf(trial, await hearScene(recogniser, samples, trial.expecting)));
  }
  return outcomes;
}

/** Sound left on each side of the speech for PocketSphinx: it hears the clip cut where the speech really is. */
const marginSamples = 0.3 * sampleRate;

/** The same scenes, the same lists, the same understanding, by PocketSphinx with a strict grammar. */
export function runTrialsByPocketSphinx(
  trials: readonly Trial[],
  room: Room,
  dictionary: ReadonlyMap<string, readonly Pronunciation[]>,
): readonly TrialOutcome[] {
  const pronounce = (word: string) =>
    pronunciations[word]?.map((text) => text.split(' ')) ?? dictionary.get(word) ?? [];
  // It starts slowly, so all clips of a state go to one process.
  const byState = new Map<string, Trial[]>();
  for (const trial of trials) {
    const state = JSON.stringify(trial.expecting);
    byState.set(state, [...(byState.get(state) ?? []), trial]);
  }
  const outcomes = new Map<Trial, TrialOutcome>();
  for (const together of byState.values()) {
    const expecting = (together[0] as Trial).expecting;
    const clips = together.map((trial) => {
      const { samples, start, end } = sceneOf(trial, room);
      return samples.slice(start - marginSamples, end + marginSamples);
    });
    const heardAll = pocketSphinxHears(clips, strictGrammar(expecting), pronounce);
    for (const [i, trial] of together.entries())
      outcomes.set(trial, outcomeOf(trial, [understand(heardAll[i] ?? '', expecting)]));
  }
  return trials.map((trial) => outcomes.get(trial) as TrialOutcome);
}

/**
 * Phrases stand alone, and so does a whole number up to a hundred; the words of measurements are said in any order and
 * number, as the ears' list allows.
 */
function strictGrammar(expecting: Expecting): StrictGrammar {
  const { value, ...withoutValue } = expecting;
  const spelt = (list: readonly string[]) =>
    list.filter((token) => token !== UNKNOWN_WORD).map((token) => token.replaceAll('_', ' '));
  const all = spelt(recogniserList(expecting));
  if (value === undefined || value.kind === 'count') return { phrases: all, words: [] };
  const phrases = spelt(recogniserList(withoutValue));
  return { phrases, words: all.filter((each) => !phrases.includes(each)) };
}
