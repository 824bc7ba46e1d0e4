/**
 * Prints how well the bundled speech model understands: synthetic voices that settings were chosen with and others that
 * they were not, quiet and in noise, with PocketSphinx on the same clips beside it. Clips are kept in the system's
 * folder for temporary files, so a second run is faster.
 *
 * Run with: npm run bench:speech -- [options]
 *   --only PATTERN   conditions whose name matches, such as 'judging phrases .state., engine 10 dB'; all of them
 *   --trials N       trials in each condition; 60
 *   --seed N         2024
 *   --workers N      processes beside each other; 1
 *   --alone          without PocketSphinx
 *   --build          with a model built from the grammar and tuning as they are now, not the bundled one
 *   --archive FILE   with a model from a file
 *   --list           names the conditions and ends
 */
import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { readAcousticSource } from '../../audio/command-model/acoustic-source.ts';
import { exactInterval } from '../../flows/figures/binomial-interval.ts';
import { ensureDebianPackages } from '../debian.ts';
import { bundledArchive, currentArchive } from '../speech/bundled-model.ts';
import { type Condition, conditions } from '../speech/conditions.ts';
import { type DecodingWork, recogniserOver } from '../speech/node-recogniser.ts';
import { runTrials, runTrialsByPocketSphinx, type TrialOutcome } from '../speech/run-trials.ts';
import { verdicts } from '../speech/verdict.ts';
import { loadVoskModel } from '../speech/vosk-in-node.ts';
import { wordErrorRate, wordErrors } from '../speech/word-errors.ts';

const { values: options } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    trials: { type: 'string', default: '60' },
    seed: { type: 'string', default: '2024' },
    workers: { type: 'string', default: '1' },
    alone: { type: 'boolean', default: false },
    build: { type: 'boolean', default: false },
    archive: { type: 'string' },
    list: { type: 'boolean', default: false },
    /** Set by the bench for the processes it starts. */
    share: { type: 'string' },
  },
});

interface Measured {
  readonly ours: readonly TrialOutcome[];
  readonly reference: readonly TrialOutcome[];
  readonly work: DecodingWork;
}

const chosen = conditions(Number(options.trials), Number(options.seed)).filter(({ name }) =>
  new RegExp(options.only).test(name),
);
const workers = Number(options.workers);

if (options.list) for (const { name } of chosen) console.log(name);
else if (options.share === undefined) await measureAll();
else await measureShare(Number(options.share), (measured) => process.send?.(measured));
process.exit(0); // the library's worker has no end of its own

/** Measures one worker's share of every condition, and hands each over as it is done. */
async function measureShare(share: number, done: (measured: Measured) => void): Promise<void> {
  const { dictionary } = readAcousticSource();
  const { model, close } = await loadVoskModel(archive());
  for (const { trials, room } of chosen) {
    const mine = trials.filter((_, i) => i % workers === share);
    const work: DecodingWork = { decodedSeconds: 0, cpuSeconds: 0 };
    const ours = await runTrials(recogniserOver(model, work), mine, room);
    done({ ours, reference: options.alone ? [] : runTrialsByPocketSphinx(mine, room, dictionary), work });
  }
  close();
}

function archive(): Uint8Array {
  if (options.archive !== undefined) return readFileSync(options.archive);
  return options.build ? currentArchive() : bundledArchive();
}

async function measureAll(): Promise<void> {
  ensureDebianPackages();
  console.log(`seed ${options.seed}; load of the machine ${(loadavg()[0] ?? 0).toFixed(1)}`);
  const measured = chosen.map((): Measured[] => []);
  const handIn = () => {
    let at = 0;
    return (one: Measured) => {
      const condition = at++;
      measured[condition]?.push(one);
      // In order, and each once all of its shares are there.
      if (measured[condition]?.length === workers)
        report(chosen[condition] as Condition, joined(measured[condition]));
    };
  };
  if (workers === 1) await measureShare(0, handIn());
  else {
    const file = join(mkdtempSync(join(tmpdir(), 'speech-model-')), 'archive');
    writeFileSync(file, archive());
    await Promise.all(Array.from({ length: workers }, (_, share) => measureElsewhere(share, file, handIn())));
    rmSync(dirname(file), { recursive: true });
  }
  reportPools(measured.map(joined));
}

function measureElsewhere(share: number, file: string, done: (measured: Measured) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const args = [...process.argv.slice(2), '--share', String(share), '--archive', file];
    const worker = fork(fileURLToPath(import.meta.url), args, { serialization: 'advanced' });
    worker.on('message', (message) => done(message as Measured));
    worker.on('exit', (code) =>
      code === 0 ? resolve() : reject(new Error(`A worker of the bench ended with ${code}.`)),
    );
  });
}

function joined(shares: readonly Measured[]): Measured {
  return {
    ours: shares.flatMap(({ ours }) => ours),
    reference: shares.flatMap(({ reference }) => reference),
    work: {
      decodedSeconds: shares.reduce((sum, { work }) => sum + work.decodedSeconds, 0),
      cpuSeconds: shares.reduce((sum, { work }) => sum + work.cpuSeconds, 0),
    },
  };
}

function report({ name }: Condition, { ours, reference, work }: Measured): void {
  const factor = work.cpuSeconds / Math.max(work.decodedSeconds, 1e-9);
  console.log(`\n${name} (${ours.length} trials; real-time factor ${factor.toFixed(2)})`);
  reportLines(ours, reference);
  for (const { speaker, text, verdict, heard } of ours) {
    if (verdict !== 'right') console.log(`    ${verdict}: ${speaker} "${text}" as "${heard}"`);
  }
}

function reportLines(ours: readonly TrialOutcome[], reference: readonly TrialOutcome[]): void {
  console.log(`  bundled model  ${line(ours)}`);
  if (reference.length > 0) console.log(`  PocketSphinx   ${line(reference)}`);
}

/** What the conditions of one level come to together. */
function reportPools(measured: readonly Measured[]): void {
  console.log('\nTogether');
  for (const pool of new Set(chosen.map((condition) => condition.pool))) {
    const { ours, reference } = joined(measured.filter((_, i) => chosen[i]?.pool === pool));
    console.log(`${pool} (${ours.length} trials)`);
    reportLines(ours, reference);
  }
  const all = joined(measured).ours;
  const confirmed = all.filter(({ isFalselyConfirmed }) => isFalselyConfirmed).length;
  const { upper } = exactInterval(confirmed, all.length, 0.95);
  console.log(
    `\nlockout confirmations from anything but their own phrase: ${confirmed} of ${all.length} (at most ${percent(upper)} %)`,
  );
  const pairs = new Map<string, number>();
  for (const { text, heard, verdict } of all) {
    if (verdict !== 'wrong' && verdict !== 'voided') continue;
    const pair = `${verdict}: "${text}" as "${heard}"`;
    pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
  }
  if (pairs.size > 0) console.log('\ntaken for something else');
  for (const [pair, count] of [...pairs].sort(([, a], [, b]) => b - a)) console.log(`  ${count} ${pair}`);
}

function line(outcomes: readonly TrialOutcome[]): string {
  const shares = verdicts.map((verdict) => {
    const found = outcomes.filter((outcome) => outcome.verdict === verdict).length;
    const { lower, upper } = exactInterval(found, outcomes.length, 0.95);
    return `${verdict} ${found} = ${percent(found / outcomes.length)} % (${percent(lower)} to ${percent(upper)})`;
  });
  const rate = wordErrorRate(outcomes.map(({ text, heard }) => wordErrors(wordsOf(text), wordsOf(heard))));
  return `${shares.join('   ')}   word errors ${percent(rate)} %`;
}

/** Plain words: unknown speech is none, and where one stretch of sound ends and another begins does not matter. */
function wordsOf(text: string): readonly string[] {
  return text.split(' ').filter((word) => /^[a-z']/.test(word));
}

function percent(share: number): string {
  return (100 * share).toFixed(1);
}
