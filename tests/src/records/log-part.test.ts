import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { entriesOf, isDueWhole, joinedText, linesText, partOf } from '../../../src/records/log-part.ts';

const anyLog = fc.array(fc.string(), { minLength: 1, maxLength: 40 }).map((texts) =>
  texts.map(
    (text, seq): LogEntry => ({
      jobId: 'a job',
      seq,
      atMs: seq,
      event: { type: 'record.note', text },
      promptState: 'record',
      tabletId: 'a tablet',
    }),
  ),
);

describe('the parts of a log', () => {
  it('give the log back wherever it was cut, also where a lost answer left lines in two parts', () => {
    fc.assert(
      fc.property(anyLog, fc.array(fc.nat(40)), fc.nat(3), (log, cuts, twice) => {
        const starts = [...new Set([0, ...cuts.filter((cut) => cut < log.length)])].sort((a, b) => a - b);
        const parts = starts.map((start, at) =>
          partOf(log.slice(start, (starts[at + 1] ?? log.length) + (at % 2) * twice)),
        );
        expect(entriesOf('a job', parts)).toEqual(log);
        expect(joinedText(parts)).toBe(linesText(log));
      }),
    );
  });

  it('are written as one at the end of a job, and never less so when a write is tried again with more lines', () => {
    fc.assert(
      fc.property(fc.nat(300), fc.nat(20), fc.nat(20), (keptCount, unsaved, more) => {
        expect(isDueWhole(keptCount, keptCount + unsaved, true)).toBe(true);
        const first = isDueWhole(keptCount, keptCount + unsaved, false);
        if (first) expect(isDueWhole(keptCount, keptCount + unsaved + more, false)).toBe(true);
      }),
    );
  });

  it('are few, however long a job goes on', () => {
    let rows = 0;
    for (let kept = 0; kept < 300; kept++) {
      rows = isDueWhole(kept, kept + 1, false) ? 1 : rows + 1;
      expect(rows).toBeLessThanOrEqual(16);
    }
  });

  it('have a line each at least', () => {
    expect(() => partOf([])).toThrow('at least one line');
  });
});
