/**
 * Prints how good the question order is: the expected minutes of every family beside the exact optimum, and
 * simulated jobs through the whole dialogue beside a printed list that is always worked in the same order.
 * Run with: npx tsx tests/bench/diagnosis.ts [jobs]
 */
import { PRIOR_BELIEFS } from '../../flows/diagnosis/beliefs.ts';
import { entropyBits } from '../../flows/diagnosis/information.ts';
import { bestOrder, minutesInOrder } from '../../flows/diagnosis/inspection-order.ts';
import type { NextStep } from '../../flows/diagnosis/next-step.ts';
import { familyById } from '../../flows/families/all.ts';
import { FAMILY_IDS, SOMETHING_ELSE } from '../../flows/families/family.ts';
import { INSPECTION_TABLES, TABLE_LOCKOUT_MINUTES } from '../outside/inspection-table.ts';
import { likeliestFirst, sureInspections } from '../outside/sure-inspections.ts';
import {
  dice,
  drawTruth,
  FALLIBLE,
  type JobOutcome,
  manualLookup,
  SURE,
  simulatedJob,
} from './simulated-job.ts';

const SEED = 20_240_601;
const jobs = Number(process.argv[2] ?? 10_000);

printOrders();
printJobs();

function printOrders(): void {
  console.log('Expected minutes to find the cause, one sure inspection a cause, lockout 8 minutes paid once');
  console.log('(probabilities and minutes are expert estimates of this project)');
  console.table(
    Object.fromEntries(
      FAMILY_IDS.map((id) => {
        const table = INSPECTION_TABLES[id];
        const probabilities = table.rows.map(({ probability }) => probability);
        const best = bestOrder(probabilities, sureInspections(table), TABLE_LOCKOUT_MINUTES);
        const byProbability = minutesInOrder(probabilities, likeliestFirst(table), TABLE_LOCKOUT_MINUTES);
        return [
          id,
          {
            'this order': round(best.expectedMinutes),
            'worked optimum': table.best,
            'by probability': round(byProbability),
            'worked, by probability': table.byProbability,
          },
        ];
      }),
    ),
  );
}

function printJobs(): void {
  const decisionMs: number[] = [];
  const timed = (step: () => NextStep): NextStep => {
    const start = performance.now();
    const result = step();
    decisionMs.push(performance.now() - start);
    return result;
  };
  const roll = dice(SEED, FALLIBLE);
  const truths = Array.from({ length: jobs }, () => drawTruth(roll));
  const dialogue = truths.map((truth) => simulatedJob(truth, roll, timed));
  const manual = truths.map((truth) => manualLookup(truth, roll));

  console.log(
    `\n${jobs} simulated jobs, ${(FALLIBLE.wrong * 100).toFixed(1)} % of answers wrong, ${FALLIBLE.notSure * 100} % not sure`,
  );
  const sureRoll = dice(SEED, SURE);
  const sure = truths.map((truth) => simulatedJob(truth, sureRoll, (step) => step()));
  console.table({
    dialogue: summary(dialogue),
    'printed list': summary(manual),
    'dialogue, every answer right': summary(sure),
  });
  const bits = entropyBits(PRIOR_BELIEFS.map(({ probability }) => probability));
  console.log(
    `Entropy of the causes: ${bits.toFixed(2)} bits, so no scheme of yes-or-no questions needs fewer.`,
  );
  console.log('\nBy family, through the dialogue:');
  console.table(
    Object.fromEntries(
      FAMILY_IDS.map((id) => [id, summary(dialogue.filter(({ truth }) => truth.family === id))]),
    ),
  );
  decisionMs.sort((a, b) => a - b);
  console.log(
    `Next-step decision: median ${percentile(decisionMs, 0.5)} ms, 95th percentile ${percentile(decisionMs, 0.95)} ms, ` +
      `longest ${percentile(decisionMs, 1)} ms, over ${decisionMs.length} decisions`,
  );
}

function summary(outcomes: readonly JobOutcome[]) {
  const listed = outcomes.filter(({ truth }) => truth.cause !== SOMETHING_ELSE);
  const unlisted = outcomes.filter(({ truth }) => truth.cause === SOMETHING_ELSE);
  return {
    'cause reached %': share(listed, ({ end }) => end === 'found'),
    'cause reached, or its dealer %': share(
      listed,
      ({ end, truth }) => end === 'found' || isForTheDealer(truth),
    ),
    'wrongly referred %': share(listed, ({ end, truth }) => end === 'referred' && !isForTheDealer(truth)),
    'handed over %': share(listed, ({ end, truth }) => end === 'handedOver' && !isForTheDealer(truth)),
    'unlisted handed over %': share(unlisted, ({ end }) => end !== 'found'),
    'mean questions': mean(listed, ({ questions }) => questions),
    'mean minutes': mean(listed, ({ minutes }) => minutes),
    'vain repairs': mean(listed, ({ vainRepairs }) => vainRepairs),
  };
}

function isForTheDealer({ family, cause }: JobOutcome['truth']): boolean {
  return familyById(family).causes[cause]?.remedy.refer !== undefined;
}

function share(outcomes: readonly JobOutcome[], holds: (outcome: JobOutcome) => boolean): number {
  return round((100 * outcomes.filter(holds).length) / outcomes.length);
}

function mean(outcomes: readonly JobOutcome[], of: (outcome: JobOutcome) => number): number {
  return round(outcomes.reduce((sum, outcome) => sum + of(outcome), 0) / outcomes.length);
}

function percentile(sorted: readonly number[], part: number): string {
  return (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN).toFixed(2);
}

function round(value: number): number {
  return Number(value.toFixed(2));
}
