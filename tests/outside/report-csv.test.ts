import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv } from '../../src/report/csv.ts';

describe('a table for a spreadsheet', () => {
  it('quotes as the examples of RFC 4180, section 2, rules 6 and 7, do', () => {
    expect(csv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  });

  it('can be read back by the grammar of RFC 4180, whatever stands in it', () => {
    const cell = fc
      .oneof(fc.string(), fc.constantFrom('"', ',', '\r\n', 'a, "b"', ''))
      .filter((text) => !/^[=+\-@\t\r]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }), (rows) => {
        expect(parse(csv(rows))).toEqual(rows);
      }),
    );
  });

  it('keeps a spreadsheet from running what somebody said as a formula', () => {
    expect(csv([['=SUM(A1)', '+1', '-1', '@x', 'a=b', -1]])).toBe("'=SUM(A1),'+1,'-1,'@x,a=b,-1\r\n");
  });
});

/** The grammar of RFC 4180, section 2, as regular expressions. */
function parse(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  for (const [, quoted, plain, end] of text.matchAll(field)) {
    row.push(quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'));
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
