/** `npx tsx tests/bench/topics.ts`: every phrase that is asked beside a job, heard by the shipped model in a quiet room. */
import { loadBundledModel } from '../speech/bundled-model.ts';
import { recogniserOver } from '../speech/node-recogniser.ts';
import { runTrials } from '../speech/run-trials.ts';
import { quietRoom } from '../speech/scenes.ts';
import { TOPIC_NAMES, topicTrials } from '../speech/topics.ts';
import { verdicts } from '../speech/verdict.ts';
import { voicesFor } from '../speech/voices.ts';

/** Of the 372 days; every phrase of the other topics is said. */
const MOST_PHRASES = 60;

const voices = voicesFor('tuning').filter(({ engine }) => engine === 'flite');
const { model, close } = await loadBundledModel();
const recogniser = recogniserOver(model, { decodedSeconds: 0, cpuSeconds: 0 });
for (const topic of TOPIC_NAMES) {
  const outcomes = await runTrials(recogniser, topicTrials(topic, MOST_PHRASES, voices), quietRoom);
  const counts = verdicts.map(
    (verdict) => `${outcomes.filter((outcome) => outcome.verdict === verdict).length} ${verdict}`,
  );
  console.log(`${topic}: of ${outcomes.length}, ${counts.join(', ')}`);
  for (const { verdict, text, speaker, heard } of outcomes) {
    if (verdict !== 'right') console.log(`  ${verdict}: "${text}" by ${speaker} as "${heard}"`);
  }
}
close();
