/** How the bench of the ears prints what it measured. */
import { exactInterval } from '../../flows/figures/binomial-interval.ts';
import type { DecodingWork } from '../speech/node-recogniser.ts';
import { mostExpected } from '../speech/poisson-bound.ts';
import type { FalseCommand, FalseCommands } from '../speech/rejection.ts';
import type { TrialOutcome } from '../speech/run-trials.ts';
import { verdicts } from '../speech/verdict.ts';
import { wordErrorRate, wordErrors } from '../speech/word-errors.ts';

export interface Measured {
  readonly ours: readonly TrialOutcome[];
  readonly reference: readonly TrialOutcome[];
  readonly work: DecodingWork;
}

/** One condition, and what was not right in it. */
export function reportCondition(name: string, { ours, reference, work }: Measured): void {
  const factor = work.cpuSeconds / Math.max(work.decodedSeconds, 1e-9);
  console.log(`\n${name} (${ours.length} trials; real-time factor ${factor.toFixed(2)})`);
  reportLines(ours, reference);
  for (const { speaker, text, verdict, heard } of ours) {
    if (verdict !== 'right') console.log(`    ${verdict}: ${speaker} "${text}" as "${heard}"`);
  }
}

/** Conditions added up. */
export function reportPool(name: string, { ours, reference }: Measured): void {
  console.log(`${name} (${ours.length} trials)`);
  reportLines(ours, reference);
}

function reportLines(ours: readonly TrialOutcome[], reference: readonly TrialOutcome[]): void {
  console.log(`  bundled model  ${line(ours)}`);
  if (reference.length > 0) console.log(`  PocketSphinx   ${line(reference)}`);
}

function line(outcomes: readonly TrialOutcome[]): string {
  const shares = verdicts.map((verdict) => {
    const found = outcomes.filter((outcome) => outcome.verdict === verdict).length;
    const { lower, upper } = exactInterval(found, outcomes.length, 0.95);
    return `${verdict} ${found} = ${percent(found / outcomes.length)} % (${percent(lower)} to ${percent(upper)})`;
  });
  const commands = outcomes.filter(({ isCommand }) => isCommand);
  if (commands.length === 0) return shares.join('   ');
  const rate = wordErrorRate(commands.map(({ text, heard }) => wordErrors(wordsOf(text), wordsOf(heard))));
  return `${shares.join('   ')}   word errors ${percent(rate)} %`;
}

/** Plain words: unknown speech is none, and where one stretch of sound ends and another begins does not matter. */
function wordsOf(text: string): readonly string[] {
  return text.split(' ').filter((word) => /^[a-z']/.test(word));
}

/** What was taken for something else, the most frequent first. */
export function reportConfusions(outcomes: readonly TrialOutcome[]): void {
  const pairs = new Map<string, number>();
  for (const { text, heard, verdict } of outcomes) {
    if (verdict !== 'wrong' && verdict !== 'voided') continue;
    const pair = `${verdict}: "${text}" as "${heard}"`;
    pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
  }
  if (pairs.size > 0) console.log('\nTaken for something else');
  for (const [pair, count] of [...pairs].sort(([, a], [, b]) => b - a)) console.log(`  ${count} ${pair}`);
}

/** False commands in sound that was not for the app. */
export function reportOther(name: string, heard: readonly FalseCommands[]): void {
  const taken = heard.flatMap((each) => each.taken);
  const hours = heard.reduce((sum, { seconds }) => sum + seconds, 0) / 3600;
  const decoded = heard.reduce((sum, each) => sum + each.decoded, 0);
  const count = (isOne: (each: FalseCommand) => boolean) => taken.filter(isOne).length;
  const voids = count(({ risk }) => risk === 'void');
  const needLockout = count(({ needsLockout }) => needsLockout);
  const asked = count(({ isAskedBack }) => isAskedBack);
  const confirms = count(({ risk }) => risk === 'confirm');
  const acted = taken.length - voids - asked;
  const anHour = (events: number) =>
    `${(events / hours).toFixed(1)} an hour (at most ${(mostExpected(events) / hours).toFixed(1)})`;
  console.log(
    `${name}: ${taken.length} false commands in ${(60 * hours).toFixed(0)} minutes, ${anHour(taken.length)}: ` +
      `${acted} acted upon (${confirms} of them confirm a step of a lockout), ${anHour(acted)}; ${asked} asked back; ` +
      `${voids} void a lockout, ${voids - needLockout} of them also ask to carry on where there is none; ` +
      `${decoded} stretches decoded`,
  );
  if (taken.length > 0) console.log(`    ${taken.map(({ words }) => `"${words}"`).join(', ')}`);
}

/** @param trials in how many trials and stretches of other sound it could have happened */
export function reportSafety(confirmed: number, trials: number): void {
  const { upper } = exactInterval(confirmed, trials, 0.95);
  console.log(
    `\nlockout confirmations from anything but their own phrase: ${confirmed} of ${trials} (at most ${percent(upper)} %)`,
  );
}

function percent(share: number): string {
  return (100 * share).toFixed(1);
}
