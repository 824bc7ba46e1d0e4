import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { loadBundledModel } from './bundled-model.ts';
import { recogniserOver } from './node-recogniser.ts';
import { runTrials } from './run-trials.ts';
import { quietRoom } from './scenes.ts';
import { TOPIC_NAMES, topicTrials } from './topics.ts';
import { voicesFor } from './voices.ts';

/** A few phrases of each topic that is asked beside a job; tests/bench/topics.ts goes through all of them. */
const voices = voicesFor('tuning').filter(({ engine }) => engine === 'flite');
const PHRASES_A_TOPIC = 3;
/** Long enough for the list of all days on a busy machine. */
const PATIENCE_MS = 120_000;

let recogniser: Recogniser;
let close: () => void;

beforeAll(async () => {
  const loaded = await loadBundledModel();
  recogniser = recogniserOver(loaded.model, { decodedSeconds: 0, cpuSeconds: 0 });
  close = loaded.close;
});
afterAll(() => close());

it.each(TOPIC_NAMES)(
  '%s: phrases are understood in a quiet room, in the states that take them',
  async (topic) => {
    const outcomes = await runTrials(recogniser, topicTrials(topic, PHRASES_A_TOPIC, voices), quietRoom);
    const others = outcomes.filter(({ verdict }) => verdict !== 'right');
    // One may be asked again; nothing else may be made of it.
    expect(others.length, JSON.stringify(others)).toBeLessThanOrEqual(1);
    expect(others.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  },
  PATIENCE_MS,
);
