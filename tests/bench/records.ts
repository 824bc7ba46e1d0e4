import { launchChromium } from '../browser/chromium.ts';
import type { RecordsPage } from '../browser/records-page/main.tsx';
import { serveRecordsPage } from '../browser/records-server.ts';
import { straightWalk } from '../src/records/random-job.ts';

declare const recordsPage: RecordsPage;

/**
 * How long a full tablet takes: 10,000 jobs of 60 lines in a real Chromium. Run it with
 * `npx tsx tests/bench/records.ts`, with another number of jobs behind it if need be.
 */
const jobCount = Number(process.argv[2] ?? 10_000);

const server = await serveRecordsPage();
const browser = await launchChromium();
try {
  const page = await browser.newPage();
  await page.goto(server.url);
  await page.waitForFunction(() => 'recordsPage' in window);
  const entries = [{ event: { type: 'record.started' }, promptState: 'record' } as const]
    .concat(straightWalk(59).map(({ draft }) => draft) as [])
    .map((draft, seq) => ({ ...draft, jobId: '', seq, atMs: seq, tabletId: 'a tablet' }));
  await page.evaluate(([jobs, log]) => recordsPage.fill(jobs, log), [jobCount, entries] as const);
  await page.reload();
  await page.waitForFunction(() => 'recordsPage' in window);
  const times = await page.evaluate(() => recordsPage.time());
  const commits = [...times.commitsMs].sort((a, b) => a - b);
  const percentile = (share: number) => commits[Math.floor(share * (commits.length - 1))] ?? 0;
  console.table({
    'jobs of 60 lines': { value: jobCount, unit: '' },
    'open and list': { value: times.openMs, unit: 'ms' },
    'first search': { value: times.firstSearchMs, unit: 'ms' },
    'search after that': { value: times.searchMs, unit: 'ms' },
    'search that finds nothing': { value: times.missMs, unit: 'ms' },
    'commit, median': { value: percentile(0.5), unit: 'ms' },
    'commit, 95 of 100': { value: percentile(0.95), unit: 'ms' },
    'file of everything': { value: times.fileMs, unit: 'ms' },
    'size of the file': { value: times.fileMb, unit: 'MB' },
    'most heap meanwhile': { value: times.mostHeapMb, unit: 'MB' },
  });
} finally {
  await browser.close();
  await server.close();
}
