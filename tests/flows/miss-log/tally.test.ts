import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CountEntry, entryFor, standing } from '../../../flows/miss-log/entry.ts';
import { tallyOf } from '../../../flows/miss-log/tally.ts';
import { anyEntry, good, miss } from './entries.ts';

describe('a tally', () => {
  it('counts every bale that stands, a miss being a bale too', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 60 }), (entries) => {
        const tally = tallyOf(entries);
        const stands = standing(entries);
        const sum = (count: (entry: CountEntry) => number) =>
          stands.reduce((total, entry) => total + count(entry), 0);
        expect(tally.bales).toHaveLength(
          sum((entry) => (entry.kind === 'good' ? entry.bales : entry.kind === 'miss' ? 1 : 0)),
        );
        expect(tally.missedBales).toBe(sum(({ kind }) => (kind === 'miss' ? 1 : 0)));
        expect(tally.misses.left + tally.misses.right).toBe(
          sum((entry) => (entry.kind !== 'miss' ? 0 : entry.side === 'both' ? 2 : 1)),
        );
      }),
    );
  });

  it('is as it was before once an entry is taken back', () => {
    fc.assert(
      fc.property(
        fc.array(anyEntry, { maxLength: 30 }),
        anyEntry.filter(({ kind }) => kind !== 'takeBack'),
        (entries, slip) => {
          expect(tallyOf([...entries, slip, { kind: 'takeBack' }])).toEqual(tallyOf(entries));
        },
      ),
    );
  });

  it('knows the age of a ball from its change on, and on its own side only', () => {
    const { bales } = tallyOf([good(2), { kind: 'newBall', side: 'left' }, good(1), miss('left')]);
    expect(bales.map(({ ballAge }) => ballAge.left)).toEqual([undefined, undefined, 1, 2]);
    expect(bales.every(({ ballAge }) => ballAge.right === undefined)).toBe(true);
  });

  it('takes nothing back where nothing stands', () => {
    expect(tallyOf([{ kind: 'takeBack' }, { kind: 'takeBack' }, good(1)]).bales).toHaveLength(1);
  });
});

describe('a number alone', () => {
  it.each([0, -3, 0.5, 501, Number.NaN])('%s is no number of good bales', (count) => {
    expect(entryFor('value.count', { count })).toBeUndefined();
  });

  it('is that many good bales', () => {
    expect(entryFor('value.count', { count: 12 })).toEqual(good(12));
  });
});
