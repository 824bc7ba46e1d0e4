import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { loadBundledModel } from './bundled-model.ts';
import { recogniserOver } from './node-recogniser.ts';
import { hearOther } from './rejection.ts';
import { runTrials, runTrialsByPocketSphinx, type TrialOutcome } from './run-trials.ts';
import { quietRoom, type Room } from './scenes.ts';
import { otherTalkTrials, phraseTrials, recordedTalkTrials, type Trial, valueTrials } from './trials.ts';
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

/** Whatever is said, however noisy: no step of the lockout is confirmed by anything but its own phrase. */
async function hear(trials: readonly Trial[], room: Room): Promise<readonly TrialOutcome[]> {
  const outcomes = await runTrials(recogniser, trials, room);
  expect(outcomes.filter(({ isFalselyConfirmed }) => isFalselyConfirmed)).toEqual([]);
  return outcomes;
}

// Decoding takes its time beside other work.
describe('the bundled model', { timeout: 180_000 }, () => {
  it('understands phrases in a quiet room with everything active', async () => {
    const outcomes = await hear(phraseTrials(10, 'everything', voices, 1), quietRoom);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(9);
  });

  it('understands phrases beside an idling engine about as well as PocketSphinx does', async () => {
    const trials = phraseTrials(14, 'state', voices, 2);
    const outcomes = await hear(trials, engine);
    const reference = runTrialsByPocketSphinx(trials, engine, readAcousticSource().dictionary);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(12);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(count(reference, 'right') - 1);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
  });

  it('understands numbers in a quiet room', async () => {
    const outcomes = await hear(valueTrials(10, voices, 4), quietRoom);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(8);
  });

  it('refuses talk that is no phrase', async () => {
    const outcomes = await hear(otherTalkTrials(10, voices, 3), quietRoom);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(8);
  });

  it('understands voices beside a mower that settings were not chosen with', async () => {
    const trials = phraseTrials(10, 'state', voicesFor('judging'), 5);
    const outcomes = await hear(trials, { noise: 'mower', snrDb: 10 });
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(8);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
  });

  it('would rather refuse than be wrong where the noise is as loud as the voice', async () => {
    const outcomes = await hear(phraseTrials(10, 'state', voices, 6), {
      noise: 'engine',
      snrDb: 0,
    });
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
  });

  it('refuses people who say something else', async () => {
    const outcomes = await hear(recordedTalkTrials(10, 7), quietRoom);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(9);
  });

  it.each(['coughs', 'hammer blows', 'silence'] as const)('takes %s for no command', async (kind) => {
    const { taken } = await hearOther(recogniser, kind, 0, 8, 25);
    expect(taken).toEqual([]);
  });
});
