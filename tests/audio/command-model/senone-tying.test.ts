import { describe, expect, it } from 'vitest';
import { tieSenones } from '../../../audio/command-model/senone-tying.ts';

// Two codebooks; senones 0 and 2 weigh alike, 1 is different; 3 and 4 are nearly alike.
const rows = [
  [0.7, 0.3],
  [0.1, 0.9],
  [0.7, 0.3],
  [0.5, 0.5],
  [0.52, 0.48],
];
const weights = {
  streams: 1,
  densities: 2,
  senones: rows.length,
  weight: (_: number, density: number, senone: number) => rows[senone]?.[density] ?? 0,
};
const bases = [0, 0, 0, 1, 1];

describe('tied senones', () => {
  it('leaves all apart while there is room', () => {
    const tied = tieSenones([0, 1, 2, 3, 4], bases, weights, 5);
    expect(tied.all).toEqual([0, 1, 2, 3, 4]);
  });

  it('merges the most alike first, and only within a codebook', () => {
    expect(tieSenones([0, 1, 2, 3, 4], bases, weights, 4).members(0)).toEqual([0, 2]);
    const three = tieSenones([0, 1, 2, 3, 4], bases, weights, 3);
    expect(three.representative(4)).toBe(three.representative(3));
    expect(three.all).toEqual([0, 1, 3]);
    expect(tieSenones([0, 1, 2, 3, 4], bases, weights, 1).all).toEqual([0, 3]);
  });

  it('knows nothing of senones that were not given', () => {
    expect(() => tieSenones([0, 1], bases, weights, 2).representative(3)).toThrow(/not among/);
  });
});
