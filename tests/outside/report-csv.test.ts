import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobHeader } from '../../src/records/job-header.ts';
import type { EntryDraft } from '../../src/records/log-entry.ts';
import { replay } from '../../src/records/replay.ts';
import { csv, jobCsv, jobsCsv } from '../../src/report/csv.ts';
import { makeCard } from '../../src/report/make-card.ts';
import { straightWalk } from '../src/records/random-job.ts';

describe('a table for a spreadsheet', () => {
  it('quotes as the examples of RFC 4180, section 2, rules 6 and 7, do', () => {
    expect(csv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  });

  it('is read back by an independent parser of RFC 4180 (csv-parse), whatever stands in it', () => {
    const cell = fc
      .oneof(fc.string(), fc.constantFrom('"', ',', '\r\n', 'a, "b"', ''))
      .filter((text) => !/^[=+\-@\t\r]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }), (rows) => {
        expect(parse(csv(rows), { relax_column_count: true, record_delimiter: '\r\n' })).toEqual(rows);
      }),
    );
  });

  it('keeps a spreadsheet from running what somebody said as a formula', () => {
    expect(csv([['=SUM(A1)', '+1', '-1', '@x', 'a=b', -1]])).toBe("'=SUM(A1),'+1,'-1,'@x,a=b,-1\r\n");
  });
});

describe('the tables of jobs', () => {
  const drafts: EntryDraft[] = [
    { event: { type: 'record.started' }, promptState: 'record' },
    ...straightWalk(60).map(({ draft }) => draft),
    { event: { type: 'record.note', text: 'He said: "rust, and\r\nchaff"' }, promptState: 'record' },
  ];
  const entries = drafts.map((draft, seq) => ({
    ...draft,
    jobId: 'a job',
    seq,
    atMs: seq * 60_000,
    tabletId: 'a tablet',
  }));
  const rowsOf = (table: string) =>
    parse<Record<string, string>>(table, { columns: true, record_delimiter: '\r\n' });

  it('of one job is read by a parser that knows nothing of it: every row full, every finding there', () => {
    const card = makeCard({ entries });
    const rows = rowsOf(jobCsv(card));
    const of = (kind: string) => rows.filter((row) => row.kind === kind);
    expect([...of('evidence'), ...of('check')].map(({ asked, result }) => [asked, result])).toEqual(
      [...card.findings]
        .sort((a, b) => (a.kind === b.kind ? 0 : a.kind === 'evidence' ? -1 : 1))
        .map(({ asked, answer }) => [asked, answer]),
    );
    expect(of('note').map(({ result, about }) => [result, about])).toEqual([
      ['', 'He said: "rust, and\r\nchaff"'],
    ]);
    expect(of('suspected').map(({ probability }) => Number(probability))).toEqual(
      card.suspects.map(({ probability }) => probability),
    );
    // ISO 8601 in UTC, where a row has a time.
    for (const { time } of rows) if (time) expect(new Date(time).toISOString()).toBe(time);
  });

  it('of all jobs has a row a job', () => {
    const header = jobHeader({ id: 'a', originId: 'a', order: 1 }, entries, replay(entries).snapshot);
    const machines = new Map([['m', 'Home "old", farm']]);
    const rows = rowsOf(jobsCsv([{ ...header, machineId: 'm' }, header], machines));
    expect(rows.map(({ machine, outcome }) => [machine, outcome])).toEqual([
      ['Home "old", farm', header.outcome],
      ['', header.outcome],
    ]);
  });
});
