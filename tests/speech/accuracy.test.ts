import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import { loadBundledModel } from './bundled-model.ts';
import { runTrials, runTrialsByPocketSphinx, type TrialOutcome } from './run-trials.ts';
import { quietRoom, type Room } from './scenes.ts';
import { otherTalkTrials, phraseTrials, valueTrials } from './trials.ts';
import type { Verdict } from './verdict.ts';
import type { LoadedModel } from './vosk-in-node.ts';

/**
 * A quick look at what the bench measures in full (tests/bench/speech.ts), with margins: the figures must not fall far
 * without anybody noticing. Held against PocketSphinx, an independent decoder with the same acoustic parameters.
 */

const engine: Room = { noise: 'engine', snrDb: 10 };
let loaded: LoadedModel;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spoken-'));
  loaded = await loadBundledModel();
});
afterAll(() => {
  loaded.close();
  rmSync(folder, { recursive: true });
});

const count = (outcomes: readonly TrialOutcome[], verdict: Verdict) =>
  outcomes.filter((outcome) => outcome.verdict === verdict).length;
const account = (outcomes: readonly TrialOutcome[]) =>
  outcomes
    .filter(({ verdict }) => verdict !== 'right')
    .map(({ trial, verdict, heard }) => `${verdict}: "${trial.text}" by ${trial.voice.name} as "${heard}"`)
    .join('\n');

describe('the bundled model, seven voices', () => {
  it('understands phrases in a quiet room with everything active', async () => {
    const { outcomes } = await runTrials(loaded.model, phraseTrials(14, 'everything', 1), quietRoom, folder);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(13);
  });

  it('understands phrases beside an idling engine about as well as PocketSphinx does', async () => {
    const trials = phraseTrials(28, 'state', 2);
    const { outcomes } = await runTrials(loaded.model, trials, engine, folder);
    const reference = runTrialsByPocketSphinx(trials, engine, folder, readAcousticSource().dictionary);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(24);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(count(reference, 'right') - 1);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(2);
  });

  it('understands numbers in a quiet room', async () => {
    const { outcomes } = await runTrials(loaded.model, valueTrials(10, 4), quietRoom, folder);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(8);
  });

  it('refuses talk that is no phrase', async () => {
    const { outcomes } = await runTrials(loaded.model, otherTalkTrials(14, 3), quietRoom, folder);
    expect(count(outcomes, 'wrong'), account(outcomes)).toBeLessThanOrEqual(1);
    expect(count(outcomes, 'right'), account(outcomes)).toBeGreaterThanOrEqual(9);
  });
});
