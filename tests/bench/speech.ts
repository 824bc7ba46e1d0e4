/**
 * Prints how well the bundled speech model understands: synthetic voices that settings were chosen with and others that
 * they were not, quiet and in noise, and recordings of people, with PocketSphinx on the same clips beside it; then how
 * often it takes sound that was not for it for a command. All of it takes hours; a pattern chooses some. Clips are kept
 * in the system's folder for temporary files, so a second run is faster.
 *
 * Run with: npm run bench:speech -- [options]
 *   --only PATTERN   conditions whose name matches, such as 'judging phrases .state., engine 10 dB'; all of them
 *   --trials N       trials in each condition; 60; 0 for none
 *   --seed N         2024
 *   --minutes N      of each kind of sound that is not for the app; 4; 0 for none
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
import { ensureDebianPackages } from '../debian.ts';
import { bundledArchive, currentArchive } from '../speech/bundled-model.ts';
import { conditions } from '../speech/conditions.ts';
import { type DecodingWork, recogniserOver } from '../speech/node-recogniser.ts';
import {
  type FalseCommands,
  hearOther,
  KINDS_OF_OTHER,
  type KindOfOther,
  talkKinds,
} from '../speech/rejection.ts';
import { runTrials, runTrialsByPocketSphinx } from '../speech/run-trials.ts';
import { loadVoskModel } from '../speech/vosk-in-node.ts';
import {
  type Measured,
  reportCondition,
  reportConfusions,
  reportOther,
  reportPool,
  reportSafety,
} from './speech-report.ts';

const { values: options } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    trials: { type: 'string', default: '60' },
    seed: { type: 'string', default: '2024' },
    minutes: { type: 'string', default: '4' },
    workers: { type: 'string', default: '1' },
    alone: { type: 'boolean', default: false },
    build: { type: 'boolean', default: false },
    archive: { type: 'string' },
    list: { type: 'boolean', default: false },
    /** Set by the bench for the processes it starts. */
    share: { type: 'string' },
  },
});

/** What a process hands in: a condition's trials, or minutes of sound that was not for the app. */
type HandedIn = Measured | readonly FalseCommands[];

const [trials, seed, minutes, workers] = [
  whole('trials'),
  whole('seed'),
  whole('minutes'),
  Math.max(1, whole('workers')),
];
const wanted = new RegExp(options.only);
const chosen = trials === 0 ? [] : conditions(trials, seed).filter(({ name }) => wanted.test(name));
const kinds = minutes === 0 ? [] : KINDS_OF_OTHER.filter((kind) => wanted.test(nameOf(kind)));

if (options.list)
  for (const name of [...chosen.map(({ name }) => name), ...kinds.map(nameOf)]) console.log(name);
else if (options.share === undefined) await measureAll();
else await measureShare(Number(options.share), (measured) => process.send?.(measured));
process.exit(0); // the library's worker has no end of its own

function whole(name: 'trials' | 'seed' | 'minutes' | 'workers'): number {
  const number = Number(options[name]);
  if (!(Number.isInteger(number) && number >= 0))
    throw new Error(`--${name} takes a whole number, not "${options[name]}".`);
  return number;
}

function nameOf(kind: KindOfOther): string {
  return `not for the app: ${kind}`;
}

/** Measures one worker's share of every condition and kind in order, and hands each over as it is done. */
async function measureShare(share: number, done: (measured: HandedIn) => void): Promise<void> {
  const { dictionary } = readAcousticSource();
  const { model, close } = await loadVoskModel(archive());
  for (const { trials, room } of chosen) {
    const mine = trials.filter((_, i) => i % workers === share);
    const work: DecodingWork = { decodedSeconds: 0, cpuSeconds: 0 };
    const ours = await runTrials(recogniserOver(model, work), mine, room);
    done({ ours, reference: options.alone ? [] : runTrialsByPocketSphinx(mine, room, dictionary), work });
  }
  const recogniser = recogniserOver(model, { decodedSeconds: 0, cpuSeconds: 0 });
  for (const kind of kinds) {
    const heard: FalseCommands[] = [];
    for (let minute = share; minute < minutes; minute += workers)
      heard.push(await hearOther(recogniser, kind, minute, seed));
    done(heard);
  }
  close();
}

function archive(): Uint8Array {
  if (options.archive !== undefined) return readFileSync(options.archive);
  return options.build ? currentArchive() : bundledArchive();
}

async function measureAll(): Promise<void> {
  ensureDebianPackages();
  console.log(`seed ${seed}; load of the machine ${(loadavg()[0] ?? 0).toFixed(1)}`);
  const measured = chosen.map((): Measured[] => []);
  const other = kinds.map((): FalseCommands[][] => []);
  const handIn = () => {
    let at = 0;
    // In order, and each reported once all of its shares are there.
    return (one: HandedIn) => {
      const [condition, kind] = [at, at - chosen.length];
      at++;
      if ('ours' in one) {
        if (measured[condition]?.push(one) === workers)
          reportCondition(chosen[condition]?.name ?? '', joined(measured[condition]));
      } else if (other[kind]?.push([...one]) === workers) {
        reportOther(nameOf(kinds[kind] as KindOfOther), other[kind].flat());
      }
    };
  };
  if (workers === 1) await measureShare(0, handIn());
  else {
    const file = join(mkdtempSync(join(tmpdir(), 'speech-model-')), 'archive');
    writeFileSync(file, archive());
    await Promise.all(Array.from({ length: workers }, (_, share) => measureElsewhere(share, file, handIn())));
    rmSync(dirname(file), { recursive: true });
  }
  reportTogether(measured.map(joined), other);
}

function reportTogether(measured: readonly Measured[], other: readonly (readonly FalseCommands[][])[]): void {
  console.log('\nTogether');
  for (const pool of new Set(chosen.map((condition) => condition.pool)))
    reportPool(pool, joined(measured.filter((_, i) => chosen[i]?.pool === pool)));
  const heardOf = (isTalk: boolean) =>
    other.filter((_, i) => talkKinds.includes(kinds[i] as KindOfOther) === isTalk).flat(2);
  if (heardOf(true).length > 0) reportOther('all talk', heardOf(true));
  if (heardOf(false).length > 0) reportOther('all that is no talk', heardOf(false));
  const { ours } = joined(measured);
  const heard = other.flat(2);
  const confirmed =
    ours.filter(({ isFalselyConfirmed }) => isFalselyConfirmed).length +
    heard.flatMap(({ taken }) => taken).filter(({ risk }) => risk === 'confirm').length;
  reportSafety(confirmed, ours.length + heard.reduce((sum, { decoded }) => sum + decoded, 0));
  reportConfusions(ours);
}

function measureElsewhere(share: number, file: string, done: (measured: HandedIn) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const args = [...process.argv.slice(2), '--share', String(share), '--archive', file];
    const worker = fork(fileURLToPath(import.meta.url), args, { serialization: 'advanced' });
    worker.on('message', (message) => done(message as HandedIn));
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
