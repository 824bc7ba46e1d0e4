import { describe, expect, it } from 'vitest';
import { beginFigure } from '../../../flows/figures-asked/dialogue.ts';
import type { MachineBand } from '../../../flows/machine-values.ts';
import { jobHeader } from '../../../src/records/job-header.ts';
import type { LogEntry, LoggedEvent } from '../../../src/records/log-entry.ts';
import { linesText } from '../../../src/records/log-part.ts';
import { replay } from '../../../src/records/replay.ts';
import { bundleFile } from '../../../src/records/write-bundle.ts';
import { chartText } from '../../../src/report/count-chart.tsx';
import { jobCsv } from '../../../src/report/csv.ts';
import { makeCard } from '../../../src/report/make-card.ts';
import { readText } from '../records/two-tablets.ts';

const OWN: MachineBand = {
  of: 'holderPull',
  limits: [
    { amount: 25, unit: 'poundForce' },
    { amount: 35, unit: 'poundForce' },
  ],
  source: 'page 34, "settings"',
};

function entries(...events: readonly LoggedEvent[]): LogEntry[] {
  return [{ type: 'record.started' } as const, ...events].map((event, seq) => ({
    jobId: '3f2a9c41',
    seq,
    atMs: Date.UTC(2026, 6, 1, 8, seq),
    event,
    promptState: event.type === 'machine.known' ? 'job.inquiry.opening' : 'record',
    tabletId: 'a tablet',
  }));
}

function figureEvent(): LoggedEvent {
  const turn = beginFigure('figure.flake', { baleLength: 36, strokesPerBale: 12 }, 'inch');
  if (turn.kind !== 'answers') throw new Error('Everything was known.');
  const { figure, values, say, assumptions } = turn.worked;
  return {
    type: 'record.figure',
    figure,
    values,
    said: say,
    granted: assumptions.map(({ says, standing }) => `${says} (${standing})`),
  };
}

const LOG = entries(
  { type: 'machine.known', bands: [OWN] },
  figureEvent(),
  { type: 'record.counted', entry: { kind: 'newBall', side: 'left' } },
  { type: 'record.counted', entry: { kind: 'good', bales: 50 } },
  ...Array.from(
    { length: 10 },
    (): LoggedEvent => ({ type: 'record.counted', entry: { kind: 'miss', side: 'left' } }),
  ),
);

describe('a job that was asked figures and counted bales', () => {
  it('has them on its card, in words and with what they take for granted', () => {
    const card = makeCard({ entries: LOG });
    expect(card.figures).toHaveLength(1);
    expect(card.figures[0]?.text).toContain('Each flake is three inches');
    expect(card.figures[0]?.granted.join(' ')).toContain('(derived)');
    expect(card.count).toMatchObject({ bales: 60, missed: 10, left: 10, right: 0 });
    expect(card.count?.patterns.join(' ')).toMatch(/Most of the misses are on the left/);
    const csv = jobCsv(card);
    expect(csv).toContain('Each flake is three inches');
    expect(csv).toContain('Most of the misses are on the left');
  });

  it('its chart says in words what it draws: every bale in one run, and the whole', () => {
    const { count } = makeCard({ entries: LOG });
    if (!count) throw new Error('Bales were counted.');
    expect(count.runs.reduce((sum, { from, to }) => sum + to - from + 1, 0)).toBe(60);
    expect(count.runs.reduce((sum, { missed }) => sum + missed, 0)).toBe(10);
    for (const { rate, lower, upper } of count.runs) {
      expect(lower).toBeLessThanOrEqual(rate);
      expect(upper).toBeGreaterThanOrEqual(rate);
    }
    expect(chartText(count)).toContain('10 of 60 bales missed (left 10, right 0)');
    expect(chartText(count)).toContain('Bales 55 to 60: 6 missed');
  });

  it('replays as it ran, and travels to another tablet and back whole', async () => {
    const { snapshot, departsAtSeq } = replay(LOG);
    expect(departsAtSeq).toBeUndefined();
    expect(snapshot.context.ownBands).toEqual([OWN]);
    const header = jobHeader({ id: '3f2a9c41', originId: '3f2a9c41', order: 1 }, LOG, snapshot);
    const { file } = await bundleFile({
      tabletId: 'a tablet',
      savedAtMs: 0,
      machines: [],
      jobs: [[{ header, lines: linesText(LOG) }]],
    });
    const read = await readText(await file.text());
    if (!read.ok) throw new Error(read.reason);
    expect(read.bundle.job(0).entries.map(({ event }) => event)).toEqual(LOG.map(({ event }) => event));
  });

  it('only the last of a figure asked twice is on the card', () => {
    expect(makeCard({ entries: entries(figureEvent(), figureEvent()) }).figures).toHaveLength(1);
  });
});
