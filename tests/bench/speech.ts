/**
 * Prints how well the bundled speech model understands: seven voices, quiet and beside an engine, phrases and other
 * talk, PocketSphinx on the same clips beside it. Takes some minutes; a part of a condition's name chooses some of them.
 * Run with: npx tsx tests/bench/speech.ts [trials a condition] [seed] [pattern of the names]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import { exactInterval } from '../../flows/figures/binomial-interval.ts';
import { ensureDebianPackages } from '../debian.ts';
import { loadBundledModel } from '../speech/bundled-model.ts';
import { runTrials, runTrialsByPocketSphinx, type TrialOutcome } from '../speech/run-trials.ts';
import { quietRoom, type Room } from '../speech/scenes.ts';
import { otherTalkTrials, phraseTrials, type Trial, valueTrials } from '../speech/trials.ts';
import { verdicts } from '../speech/verdict.ts';

const trialCount = Number(process.argv[2] ?? 140);
const seed = Number(process.argv[3] ?? 2024);
const wanted = new RegExp(process.argv[4] ?? '');

interface Condition {
  readonly name: string;
  readonly trials: readonly Trial[];
  readonly room: Room;
}

const engineAt = (snrDb: number): Room => ({ noise: 'engine', snrDb });
const inState = phraseTrials(trialCount, 'state', seed);
const everything = phraseTrials(trialCount, 'everything', seed);
const values = valueTrials(trialCount, seed);
const talk = otherTalkTrials(trialCount, seed);
const conditions: readonly Condition[] = [
  { name: 'phrases, quiet, list of a state', trials: inState, room: quietRoom },
  { name: 'phrases, quiet, everything active', trials: everything, room: quietRoom },
  { name: 'phrases, engine 10 dB, list of a state', trials: inState, room: engineAt(10) },
  { name: 'phrases, engine 10 dB, everything active', trials: everything, room: engineAt(10) },
  { name: 'phrases, engine 5 dB, list of a state', trials: inState, room: engineAt(5) },
  { name: 'numbers, quiet, list of a state', trials: values, room: quietRoom },
  { name: 'numbers, engine 10 dB, list of a state', trials: values, room: engineAt(10) },
  { name: 'other talk, quiet, list of a state', trials: talk, room: quietRoom },
  { name: 'other talk, engine 10 dB, list of a state', trials: talk, room: engineAt(10) },
];

ensureDebianPackages();
const { dictionary } = readAcousticSource();
const folder = mkdtempSync(join(tmpdir(), 'spoken-'));
// The library prints each file that it unpacks.
const print = console.log;
console.log = () => {};
const { model, close } = await loadBundledModel();
try {
  const [loadBefore] = loadavg();
  print(`seed ${seed}; load of the machine ${(loadBefore ?? 0).toFixed(1)}`);
  const all: TrialOutcome[] = [];
  for (const { name, trials, room } of conditions.filter(({ name }) => wanted.test(name))) {
    const ours = await runTrials(model, trials, room, folder);
    all.push(...ours.outcomes);
    const reference = runTrialsByPocketSphinx(trials, room, folder, dictionary);
    print(`\n${name} (${trials.length} trials; real-time factor ${ours.realTimeFactor.toFixed(2)})`);
    print(`  bundled model  ${line(ours.outcomes)}`);
    print(`  PocketSphinx   ${line(reference)}`);
    for (const { trial, verdict, heard } of ours.outcomes) {
      if (verdict !== 'right') print(`    ${verdict}: ${trial.voice.name} "${trial.text}" as "${heard}"`);
    }
  }
  const confirmed = all.filter(({ isFalselyConfirmed }) => isFalselyConfirmed).length;
  const { upper } = exactInterval(confirmed, all.length, 0.95);
  print(
    `\nlockout confirmations from anything but their own phrase: ${confirmed} of ${all.length} (at most ${(100 * upper).toFixed(2)} %)`,
  );
} finally {
  close();
  rmSync(folder, { recursive: true });
}
process.exit(0); // the library's worker has no end of its own

function line(outcomes: readonly TrialOutcome[]): string {
  return verdicts
    .map((verdict) => {
      const found = outcomes.filter((outcome) => outcome.verdict === verdict).length;
      const { lower, upper } = exactInterval(found, outcomes.length, 0.95);
      const percent = (share: number) => (100 * share).toFixed(1);
      return `${verdict} ${found} = ${percent(found / outcomes.length)} % (${percent(lower)} to ${percent(upper)})`;
    })
    .join('   ');
}
