import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { loadBundledModel } from './bundled-model.ts';
import { recogniserOver } from './node-recogniser.ts';
import { runTrials, runTrialsByPocketSphinx, type TrialOutcome } from './run-trials.ts';
import { quietRoom, type Room } from './scenes.ts';
import { otherTalkTrials, phraseTrials, valueTrials } from './trials.ts';
import type { Verdict } from './verdict.ts';
import { voicesFor } from './voices.ts';

/**
 * A quick look at what the bench measures in full (tests/bench/speech.ts), with margins: the figures must not fall far
 * without anybody noticing. Held against PocketSphinx, an independent decoder with the same acoustic parameters.
 */

const engine: Room = { noise: 'engine', snrDb: 10 };
const voices = voicesFor('tuning');
let recogniser: Recogniser;
let close: () => void;

beforeAll(async () => {
  const loaded = await loadBundledModel();
  recogniser = recogniserOver(loaded.model, { decodedSeconds: 0, cpuSeconds: 0 });
  close = loaded.close;
});
afterAll(() => close());

const count = (outcomes: readonly TrialOutcome[], verdict: Verdict) =>
  outcomes.filter((outcome) => outcome.verdict === verdict).length;
const account = (outcomes: readonly TrialOutcome[]) =>
  outcomes
    .filter(({ verdict }) => verdict !== 'right')
    .map(({ speaker, text, verdict, heard }) => `${verdict}: "${text}" by ${speaker} as "${heard}"`)
    .join('\n');

describe('the bundled model', () => {
  it('understands phrases in a quiet room with everything active', async () => {
    const outcomes = await runTrials(recogniser, phraseTrials(14, 'everything', voices, 1), quietRoom);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(13);
  });

  it('understands phrases beside an idling engine about as well as PocketSphinx does', async () => {
    const trials = phraseTrials(28, 'state', voices, 2);
    const outcomes = await runTrials(recogniser, trials, engine);
    const reference = runTrialsByPocketSphinx(trials, engine, readAcousticSource().dictionary);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(24);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(count(reference, 'right') - 1);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(2);
  });

  it('understands numbers in a quiet room', async () => {
    const outcomes = await runTrials(recogniser, valueTrials(10, voices, 4), quietRoom);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(8);
  });

  it('refuses talk that is no phrase', async () => {
    const outcomes = await runTrials(recogniser, otherTalkTrials(14, voices, 3), quietRoom);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(9);
  });
});
