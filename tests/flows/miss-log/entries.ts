import fc from 'fast-check';
import type { CountEntry } from '../../../flows/miss-log/entry.ts';

const side = fc.constantFrom('left', 'right') as fc.Arbitrary<'left' | 'right'>;

/** Anything that can be counted, in any order. */
export const anyEntry: fc.Arbitrary<CountEntry> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.integer({ min: 1, max: 40 }).map((bales) => ({ kind: 'good' as const, bales })),
  },
  {
    weight: 4,
    arbitrary: fc
      .constantFrom('left', 'right', 'both')
      .map((missed) => ({ kind: 'miss' as const, side: missed as 'left' | 'right' | 'both' })),
  },
  { weight: 1, arbitrary: side.map((each) => ({ kind: 'newBall' as const, side: each })) },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('thin', 'usual', 'dense')
      .map((crop) => ({ kind: 'crop' as const, crop: crop as 'thin' | 'usual' | 'dense' })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('looser', 'usual', 'tighter').map((density) => ({
      kind: 'density' as const,
      density: density as 'looser' | 'usual' | 'tighter',
    })),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('slow', 'full')
      .map((speed) => ({ kind: 'speed' as const, speed: speed as 'slow' | 'full' })),
  },
  { weight: 1, arbitrary: fc.constant({ kind: 'takeBack' as const }) },
);

export const good = (bales: number): CountEntry => ({ kind: 'good', bales });
export const miss = (missed: 'left' | 'right' | 'both'): CountEntry => ({ kind: 'miss', side: missed });

export function repeated(times: number, entries: readonly CountEntry[]): readonly CountEntry[] {
  return Array.from({ length: times }, () => entries).flat();
}
