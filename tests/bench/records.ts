import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import { launchChromium } from '../browser/chromium.ts';
import type { RecordsPage } from '../browser/records-page/main.tsx';
import { serveRecordsPage } from '../browser/records-server.ts';
import { walk } from '../src/records/random-job.ts';

declare const recordsPage: RecordsPage;

/**
 * How long a full tablet takes: 10,000 jobs of 60 lines in a real Chromium, taken in from a file as another tablet
 * would have made it. Beside each time stands what the browser's store takes for the same bytes with nothing of the
 * app about it, measured in the same minute: on a loaded machine the ratio tells more than the time. Run it with
 * `npx tsx tests/bench/records.ts`, with another number of jobs behind it if need be.
 */
const jobCount = Number(process.argv[2] ?? 10_000);

const LINES_A_JOB = 60;
const KINDS_OF_JOBS = 40;

const server = await serveRecordsPage();
const browser = await launchChromium(['--enable-precise-memory-info']);
try {
  const page = await browser.newPage();
  const fresh = async () => {
    await page.goto(server.url);
    await page.waitForFunction(() => 'recordsPage' in window);
  };
  await fresh();
  const size = await page.evaluate(([jobs, logs]) => recordsPage.makeFile(jobs, logs), [
    jobCount,
    Array.from({ length: KINDS_OF_JOBS }, (_, kind) => someLog(kind)),
  ] as const);
  const takeIn = await watched(() => page.evaluate(() => recordsPage.timeTakeIn()));
  const barePutMs = await page.evaluate(() => recordsPage.timeBarePut());
  await fresh();
  const times = await page.evaluate(() => recordsPage.time());
  await fresh();
  const file = await watched(() => page.evaluate(() => recordsPage.timeFile()));
  const stopMs = await page.evaluate(() => recordsPage.timeStop());
  const cursor = await watched(() => page.evaluate(() => recordsPage.timeBareCursor()));
  const read = await watched(() => page.evaluate(() => recordsPage.timeBareRead()));
  await fresh();
  await page.evaluate(() => recordsPage.addPhotos());
  await fresh();
  const withPhotos = await watched(() => page.evaluate(() => recordsPage.timeFile()));

  const commit = percentiles(times.commitsMs);
  const bare = percentiles(times.bareCommitsMs);
  const mb = `${size.toFixed(0)} MB`;
  const row = (ms: number, asked: string, bareMs?: number, beside = '') => ({
    ms: rounded(ms),
    asked,
    ...(bareMs === undefined ? {} : { 'bare store, ms': rounded(bareMs), ratio: rounded(ms / bareMs) }),
    beside,
  });
  console.log(
    `${jobCount} jobs of ${LINES_A_JOB} lines, ${mb}; load ${loadavg()[0]?.toFixed(1)} on two cores`,
  );
  console.table({
    'take in everything': row(
      takeIn.value.takeInMs,
      '',
      barePutMs,
      `told ${takeIn.value.progressTold} times how far it was`,
    ),
    'stop taking in': row(
      takeIn.value.stopMs,
      '',
      undefined,
      `${takeIn.value.jobsAfterStop} jobs kept of it`,
    ),
    'open and list': row(times.openMs, '< 300'),
    'first search': row(times.firstSearchMs, '< 100', times.bareHeadersMs),
    'search after that': row(times.searchMs, '< 100'),
    'search that finds nothing': row(times.missMs, '< 100'),
    'commit, median': row(commit(0.5), '', bare(0.5)),
    'commit, 95 of 100': row(commit(0.95), '< 10', bare(0.95)),
    'file of everything': row(
      file.value.fileMs,
      '< 10000',
      read.value,
      `told ${file.value.progressTold} times how far it was`,
    ),
    'stop making the file': row(stopMs, ''),
    'file with photos': row(
      withPhotos.value.fileMs,
      '',
      undefined,
      `${withPhotos.value.fileMb.toFixed(0)} MB, ${withPhotos.value.photosLeftOut} photo left out`,
    ),
  });
  // Processor time hardly depends on what else the machine does.
  console.table({
    'take in half of everything and stop, then everything': { 'processor, s': rounded(takeIn.cpuS) },
    'file of everything': { 'processor, s': rounded(file.cpuS) },
    'its rows by a bare cursor': { 'processor, s': rounded(cursor.cpuS) },
    'its rows a hundred at a time': { 'processor, s': rounded(read.cpuS) },
  });
  console.table({
    'heap of the page before a file is made': { MB: Math.round(file.value.heapBeforeMb) },
    'most while it is made': { MB: Math.round(file.value.mostHeapMb) },
    'resident memory of the page before a file is made': { MB: Math.round(file.beforeMb) },
    'most while it is made ': { MB: Math.round(file.mostMb) },
    'resident memory before a file with photos': { MB: Math.round(withPhotos.beforeMb) },
    'most while that is made': { MB: Math.round(withPhotos.mostMb) },
    'resident memory before a file is taken in': { MB: Math.round(takeIn.beforeMb) },
    'most while it is taken in': { MB: Math.round(takeIn.mostMb) },
  });
} finally {
  await browser.close();
  await server.close();
}

/** A job of 60 lines like no other of a lower number. */
function someLog(kind: number) {
  const steps = walk(
    Array.from({ length: LINES_A_JOB - 1 }, (_, at) => (at * 16 * (kind % 5) + 1 + kind) % 9_999),
  );
  return [
    { event: { type: 'record.started' }, promptState: 'record' } as const,
    ...steps.map(({ draft }) => draft),
  ].map((draft, seq) => ({
    ...draft,
    jobId: '',
    seq,
    atMs: 1_700_000_000_000 + seq * 40_000,
    tabletId: 'another',
  }));
}

/** Does some work and watches the largest process that draws pages meanwhile. */
async function watched<T>(work: () => Promise<T>) {
  const session = await browser.newBrowserCDPSession();
  const processes = async () => (await session.send('SystemInfo.getProcessInfo')).processInfo;
  const largestPageMb = async () =>
    Math.max(
      ...(await processes()).filter(({ type }) => type === 'renderer').map(({ id }) => residentMb(id)),
    );
  const cpuSoFarS = async () => (await processes()).reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  const cpuBeforeS = await cpuSoFarS();
  const beforeMb = await largestPageMb();
  let mostMb = beforeMb;
  let isDone = false;
  const working = work().finally(() => {
    isDone = true;
  });
  while (!isDone) {
    mostMb = Math.max(mostMb, await largestPageMb());
    await setTimeout(50);
  }
  const cpuS = (await cpuSoFarS()) - cpuBeforeS;
  await session.detach();
  return { value: await working, cpuS, beforeMb, mostMb };
}

function residentMb(pid: number): number {
  const kb = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(kb ?? 0) / 1000;
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

function percentiles(values: readonly number[]): (share: number) => number {
  const sorted = [...values].sort((a, b) => a - b);
  return (share) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}
