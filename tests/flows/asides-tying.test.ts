import { describe, expect, it } from 'vitest';
import { ASIDE_LINES, type Aside, asideFor, saidOver } from '../../flows/asides.ts';
import { STATIONS } from '../../flows/tying-cycle.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import { TestJob } from './talk.ts';

const job = new TestJob();
const aside = (meaning: MeaningId, shown?: Aside) => asideFor(meaning, job.prompt, job.context, {}, shown);

/** The asides from "show me how it ties" on, a step each. */
function walk(meaning: MeaningId, from: Aside | undefined, steps: number): (Aside | undefined)[] {
  const seen = [from];
  for (let step = 0; step < steps; step += 1) seen.push(aside(meaning, seen.at(-1)));
  return seen;
}

describe('one tie, stepped by voice', () => {
  it('goes through every station in order and says what it shows', () => {
    const seen = walk('tying.next', aside('tying.open'), STATIONS.length - 1);
    expect(seen.map((each) => each?.station)).toEqual(STATIONS.map((_, at) => at));
    expect(seen.map((each) => each?.say.join(' '))).toEqual(
      STATIONS.map(({ title, tells }) => `${title}. ${tells}`),
    );
  });

  it('stays at either end and says so', () => {
    const [last, beyond] = walk('tying.next', walk('tying.next', aside('tying.open'), 8).at(-1), 1);
    expect(beyond).toEqual({ ...last, say: [ASIDE_LINES.lastStation] });
    expect(aside('tying.back', aside('tying.open'))?.say).toEqual([ASIDE_LINES.firstStation]);
    expect(aside('tying.back', last)?.station).toBe(STATIONS.length - 2);
  });

  it('is stepped only while it is shown', () => {
    expect(aside('tying.next')).toBeUndefined();
    expect(aside('tying.next', aside('why'))).toBeUndefined();
    expect(saidOver(aside('why'))).toEqual([]);
    expect(saidOver(aside('tying.open'))).toEqual(['tying.next', 'tying.back']);
  });
});
